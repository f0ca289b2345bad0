package org.fusewright.jobs.web;

import io.swagger.v3.oas.annotations.Hidden;

import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.jobs.JobWatch;
import org.fusewright.jobs.Jobs;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.mvc.method.annotation.SseEmitter;

import java.io.IOException;

/** Tells an open page of a job when somebody changes the job, as server-sent events. */
@Controller
@Hidden
class LivePages {
    private static final long NO_LIMIT = 0;
    private static final long RETRY_MS = 1000;

    private final Jobs jobs;
    private final JobWatch watch;

    LivePages(Jobs jobs, JobWatch watch) {
        this.jobs = jobs;
        this.watch = watch;
    }

    /** The event "revision" has the newest revision's number; "gone" says that there is none. */
    @GetMapping(path = "/jobs/{id}/live", produces = MediaType.TEXT_EVENT_STREAM_VALUE)
    SseEmitter watch(@PathVariable long id, HttpServletResponse response) {
        jobs.get(id);
        response.setHeader("Cache-Control", "no-store");
        // A proxy in between must not save the events up.
        response.setHeader("X-Accel-Buffering", "no");
        SseEmitter events = new SseEmitter(NO_LIMIT);
        Runnable end = watch.watch(id, new Page(events));
        events.onCompletion(end);
        events.onTimeout(end);
        events.onError(error -> end.run());
        return events;
    }

    /** Writes from a thread of its own: a slow reader must not hold up the others. */
    private record Page(SseEmitter events) implements JobWatch.Viewer {
        @Override
        public void changed(int revision) {
            send(SseEmitter.event().name("revision").data(revision).reconnectTime(RETRY_MS));
        }

        @Override
        public void gone() {
            send(SseEmitter.event().name("gone").data(""));
        }

        @Override
        public void idle() {
            send(SseEmitter.event().comment(""));
        }

        @Override
        public void closing() {
            events.complete();
        }

        private void send(SseEmitter.SseEventBuilder event) {
            Thread.startVirtualThread(
                    () -> {
                        try {
                            events.send(event);
                        } catch (IOException | IllegalStateException nobodyThere) {
                            // The server tells the emitter, which ends the watch.
                        }
                    });
        }
    }
}
