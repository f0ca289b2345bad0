package org.fusewright.jobs.web;

import jakarta.servlet.http.HttpServletResponse;

import org.fusewright.core.kit.Kit;
import org.fusewright.papers.BenchPaper;
import org.fusewright.web.AcceptedForm;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.HttpMediaTypeNotAcceptableException;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;

/** The forms that a kit goes out in: document, kit list on paper, parts list as a table. */
enum KitPapers {
    JSON(MediaType.APPLICATION_JSON) {
        @Override
        byte[] print(Kit kit, OptionalInt revision, AskedPaper asked) {
            return KitDocument.print(kit);
        }

        @Override
        void send(Kit kit, AskedPaper asked, HttpServletResponse response) throws IOException {
            response.setContentType(MediaType.APPLICATION_JSON_VALUE);
            KitDocument.send(kit, response.getOutputStream());
        }
    },
    PDF(MediaType.APPLICATION_PDF) {
        @Override
        byte[] print(Kit kit, OptionalInt revision, AskedPaper asked) {
            return BenchPaper.KIT_LIST.print(kit, revision, asked.sheet(), asked.wording());
        }
    },
    CSV(new MediaType("text", "csv", StandardCharsets.UTF_8)) {
        @Override
        byte[] print(Kit kit, OptionalInt revision, AskedPaper asked) {
            return PartsTable.print(kit);
        }
    };

    private final MediaType type;

    KitPapers(MediaType type) {
        this.type = type;
    }

    abstract byte[] print(Kit kit, OptionalInt revision, AskedPaper asked);

    MediaType type() {
        return type;
    }

    ResponseEntity<byte[]> answer(Kit kit, OptionalInt revision, AskedPaper asked) {
        return ResponseEntity.ok().contentType(type).body(print(kit, revision, asked));
    }

    /**
     * The same for a job that is not kept, and without a message converter, which takes its time
     * over a long document.
     */
    void send(Kit kit, AskedPaper asked, HttpServletResponse response) throws IOException {
        byte[] printed = print(kit, OptionalInt.empty(), asked);
        response.setContentType(type.toString());
        response.setContentLength(printed.length);
        response.getOutputStream().write(printed);
    }

    /** The form that the caller likes best. */
    static KitPapers preferred(List<MediaType> accepted)
            throws HttpMediaTypeNotAcceptableException {
        return AcceptedForm.preferred(accepted, List.of(values()), papers -> papers.type);
    }
}
