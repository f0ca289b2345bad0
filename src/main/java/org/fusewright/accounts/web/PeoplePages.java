package org.fusewright.accounts.web;

import io.swagger.v3.oas.annotations.Hidden;

import jakarta.servlet.http.HttpServletRequest;

import org.fusewright.accounts.AccountRefusedException;
import org.fusewright.accounts.AccountsMode;
import org.fusewright.accounts.People;
import org.fusewright.accounts.Person;
import org.fusewright.accounts.Role;
import org.fusewright.accounts.UnknownPersonException;
import org.fusewright.web.Asked;
import org.fusewright.web.ErrorPages;
import org.fusewright.web.Problems;
import org.fusewright.web.Secret;
import org.fusewright.web.Words;
import org.springframework.context.annotation.Conditional;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.support.ServletUriComponentsBuilder;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Who may log in. */
@Controller
@Hidden
@Conditional(AccountsMode.class)
class PeoplePages {
    private final People people;
    private final ErrorPages errors;

    PeoplePages(People people, ErrorPages errors) {
        this.people = people;
        this.errors = errors;
    }

    @GetMapping("/people")
    ModelAndView list() {
        return page("", HttpStatus.OK);
    }

    @PostMapping("/people")
    ModelAndView add(@RequestParam String name, @RequestParam String role) {
        Secret secret = Secret.draw();
        return invited(secret, people.add(name, role(role), secret.hash()));
    }

    @PostMapping("/people/{id}/link")
    ModelAndView invite(@PathVariable long id) {
        Secret secret = Secret.draw();
        return invited(secret, people.invite(id, secret.hash()));
    }

    @PostMapping("/people/{id}/role")
    String changeRole(@PathVariable long id, @RequestParam String role) {
        people.changeRole(id, role(role));
        return "redirect:/people";
    }

    @PostMapping("/people/{id}/active")
    String setActive(@PathVariable long id, @RequestParam boolean active) {
        people.setActive(id, active);
        return "redirect:/people";
    }

    private static Role role(String code) {
        return Asked.value(
                "role",
                Role.find(code),
                Stream.of(Role.values()).map(Role::code).collect(Collectors.joining(", ")));
    }

    /** The link stands on this answer alone. */
    private ModelAndView invited(Secret secret, Person person) {
        String link =
                ServletUriComponentsBuilder.fromCurrentContextPath()
                        .path("/welcome/" + secret.text())
                        .toUriString();
        return new ModelAndView(
                "accounts/people",
                Map.of(
                        "people",
                        people.list(),
                        "invited",
                        Optional.of(person.name()),
                        "link",
                        link,
                        "notice",
                        ""));
    }

    private ModelAndView page(String notice, HttpStatus status) {
        return new ModelAndView(
                "accounts/people",
                Map.of(
                        "people",
                        people.list(),
                        "invited",
                        Optional.empty(),
                        "link",
                        "",
                        "notice",
                        notice),
                status);
    }

    @ExceptionHandler
    ModelAndView refused(AccountRefusedException refused) {
        return page(Words.say(refused.reason()), HttpStatus.CONFLICT);
    }

    @ExceptionHandler
    ResponseEntity<Object> unknown(UnknownPersonException unknown, HttpServletRequest request) {
        return errors.answer(
                Problems.of(HttpStatus.NOT_FOUND, Words.say("people.unknown")), request);
    }
}
