package org.fusewright.accounts.web;

import org.fusewright.accounts.AccountsMode;
import org.fusewright.accounts.People;
import org.fusewright.web.Secret;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/**
 * Gives whoever reads the log the link that makes the first owner. The log is the only place where
 * the link stands; a later start without an owner makes another one.
 */
@Component
@Conditional(AccountsMode.class)
class FirstOwner {
    private static final Logger log = LoggerFactory.getLogger(FirstOwner.class);

    private final People people;
    private final Environment settings;

    FirstOwner(People people, Environment settings) {
        this.people = people;
        this.settings = settings;
    }

    @EventListener(ApplicationReadyEvent.class)
    @Order(Ordered.LOWEST_PRECEDENCE)
    void inviteAtStart() {
        if (!people.hasOwner()) {
            invite();
        }
    }

    /** Also when a backup without accounts was put back, or the link ran out. */
    void inviteIfNone() {
        if (!people.hasOwner() && !people.hasFirstOwnersLink()) {
            invite();
        }
    }

    private void invite() {
        Secret secret = Secret.draw();
        people.inviteFirstOwner(secret.hash());
        log.info(
                "There is no owner yet. This link makes one, once, within three days; put the"
                        + " address that people use in place of localhost:"
                        + " http://localhost:{}/welcome/{}",
                settings.getProperty("local.server.port", "8080"),
                secret.text());
    }
}
