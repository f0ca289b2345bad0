package org.fusewright.core.job;

import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.jspecify.annotations.Nullable;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Whether a job's names point at each other as they must: ids given once, feeds and circuits that
 * others name exist, and a shared device is one's own.
 */
public final class JobReferences {

    private JobReferences() {}

    /** All problems of this sort, in document order. */
    public static List<JobProblem> listProblems(Job job) {
        List<JobProblem> problems = new ArrayList<>();
        Set<String> feedIds = new HashSet<>();
        for (int i = 0; i < job.feeds().size(); i++) {
            String id = job.feeds().get(i).id();
            if (!feedIds.add(id)) {
                problems.add(givenTwice("/feeds/" + i + "/id", id));
            }
            if (id.equals(RelayUse.CONTROLLER)) {
                problems.add(JobProblem.of("/feeds/" + i + "/id", "wrong.id-controller"));
            }
        }
        Set<String> circuitIds = new HashSet<>();
        Map<String, Circuit> circuits = new HashMap<>();
        for (Circuit circuit : job.circuits()) {
            circuits.putIfAbsent(circuit.id(), circuit);
        }
        for (int i = 0; i < job.circuits().size(); i++) {
            Circuit circuit = job.circuits().get(i);
            String at = "/circuits/" + i;
            if (feedIds.contains(circuit.id())) {
                problems.add(JobProblem.of(at + "/id", "wrong.id-of-feed", circuit.id()));
            }
            if (!circuitIds.add(circuit.id())) {
                problems.add(givenTwice(at + "/id", circuit.id()));
            }
            if (!feedIds.contains(circuit.feed())) {
                problems.add(
                        JobProblem.of(
                                at + "/feed", "wrong.no-feed", circuit.feed(), named(feedIds)));
            }
            circuit.relay()
                    .ifPresent(
                            relay ->
                                    problems.addAll(
                                            relayProblems(at, circuit, relay, feedIds, circuits)));
        }
        problems.addAll(placeProblems(job));
        Set<String> locationNames = new HashSet<>();
        for (int i = 0; i < job.locations().size(); i++) {
            String name = job.locations().get(i).name();
            if (!locationNames.add(name)) {
                problems.add(givenTwice("/locations/" + i + "/name", name));
            }
        }
        return problems;
    }

    private static List<JobProblem> relayProblems(
            String at,
            Circuit circuit,
            RelayUse relay,
            Set<String> feedIds,
            Map<String, Circuit> circuits) {
        List<JobProblem> problems = new ArrayList<>();
        if (!relay.isTriggeredByController() && !feedIds.contains(relay.triggerFrom())) {
            problems.add(
                    JobProblem.of(
                            at + "/relay/triggerFrom",
                            "wrong.no-trigger-feed",
                            relay.triggerFrom(),
                            named(feedIds)));
        }
        relay.contactFrom()
                .flatMap(id -> contactProblem(circuit, id, Optional.ofNullable(circuits.get(id))))
                .ifPresent(
                        detail -> problems.add(new JobProblem(at + "/relay/contactFrom", detail)));
        return problems;
    }

    private static Optional<Text> contactProblem(
            Circuit circuit, String id, Optional<Circuit> source) {
        if (id.equals(circuit.id())) {
            return Optional.of(Phrase.of("wrong.own-contact"));
        }
        if (source.isEmpty()) {
            return Optional.of(Phrase.of("wrong.no-circuit", id));
        }
        if (source.get().contactFrom().isPresent()) {
            return Optional.of(Phrase.of("wrong.no-device-to-share", id));
        }
        if (!source.get().feed().equals(circuit.feed())) {
            return Optional.of(Phrase.of("wrong.other-feed", id, source.get().feed()));
        }
        if (!source.get().location().equals(circuit.location())) {
            return Optional.of(Phrase.of("wrong.other-location", id));
        }
        return Optional.empty();
    }

    /** A block is at one location, and a place is for what the circuit has. */
    private static List<JobProblem> placeProblems(Job job) {
        List<JobProblem> problems = new ArrayList<>();
        Map<String, String> locations = new HashMap<>();
        for (int i = 0; i < job.circuits().size(); i++) {
            Circuit circuit = job.circuits().get(i);
            String at = "/circuits/" + i;
            circuit.place()
                    .ifPresent(
                            place -> {
                                if (circuit.contactFrom().isPresent()) {
                                    problems.add(
                                            JobProblem.of(
                                                    at + "/place", "wrong.no-device-to-place"));
                                }
                                locationProblem(at, circuit, place, locations)
                                        .ifPresent(problems::add);
                            });
            circuit.relay()
                    .flatMap(RelayUse::place)
                    .flatMap(place -> locationProblem(at + "/relay", circuit, place, locations))
                    .ifPresent(problems::add);
        }
        return problems;
    }

    private static Optional<JobProblem> locationProblem(
            String at, Circuit circuit, BlockPlace place, Map<String, String> locations) {
        @Nullable String first = locations.putIfAbsent(place.block(), circuit.location());
        return first == null || first.equals(circuit.location())
                ? Optional.empty()
                : Optional.of(
                        JobProblem.of(
                                at + "/place/block",
                                "wrong.block-elsewhere",
                                place.block(),
                                first));
    }

    private static JobProblem givenTwice(String pointer, String id) {
        return JobProblem.of(pointer, "wrong.given-twice", id);
    }

    private static Text named(Set<String> ids) {
        return ids.isEmpty()
                ? Phrase.of("wrong.none")
                : Text.listed(ids.stream().sorted().map(id -> Phrase.of("quoted", id)).toList());
    }
}
