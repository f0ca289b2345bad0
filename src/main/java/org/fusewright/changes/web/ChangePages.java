package org.fusewright.changes.web;

import io.swagger.v3.oas.annotations.Hidden;

import org.fusewright.changes.ChangeQuery;
import org.fusewright.changes.Changes;
import org.fusewright.changes.RecordKind;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;

import java.util.Map;

/** The trail of changes, to be looked at. */
@Controller
@Hidden
class ChangePages {
    private static final int PAGE_LENGTH = 50;

    private final Changes changes;

    ChangePages(Changes changes) {
        this.changes = changes;
    }

    @GetMapping("/changes")
    ModelAndView list(
            @RequestParam(defaultValue = "") String what,
            @RequestParam(defaultValue = "") String record,
            @RequestParam(defaultValue = "") String who,
            @RequestParam(required = false) @Nullable Long after) {
        ChangeQuery query = ChangeAsked.query(what, record, who, after, PAGE_LENGTH);
        ChangeListView view =
                new ChangeListView(
                        changes.listHeads(query),
                        query.kind().map(RecordKind::code).orElse(""),
                        query.record().orElse(""),
                        query.by().orElse(""));
        return new ModelAndView("changes/list", Map.of("view", view));
    }

    @GetMapping("/changes/{id}")
    ModelAndView show(@PathVariable long id) {
        return changes.find(id)
                .map(change -> new ModelAndView("changes/change", "view", ChangeView.of(change)))
                .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
    }
}
