package org.fusewright.accounts;

import org.fusewright.accounts.store.PersonStore;
import org.fusewright.core.words.Phrase;
import org.fusewright.core.words.Text;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * The people who may log in. A password is chosen by the person alone, by a link that works once;
 * only the hash of a link's secret gets here. Whatever changes what a person may do logs the person
 * out.
 */
@Service
@Transactional
public class People {
    /** The longest name, which is kept with each change. */
    public static final int LONGEST_NAME = 100;

    private static final Duration LINK_HOLDS = Duration.ofDays(3);

    private final PersonStore store;
    private final Passwords passwords = new Passwords();

    People(PersonStore store) {
        this.store = store;
    }

    static Person person(PersonStore.Row row) {
        return new Person(
                row.id(),
                row.name(),
                Role.find(row.role()).orElseThrow(),
                row.active(),
                row.findHash().isPresent());
    }

    @Transactional(readOnly = true)
    public List<Person> list() {
        return store.list().stream().map(People::person).toList();
    }

    /** Somebody who may do something. */
    @Transactional(readOnly = true)
    public Optional<Person> findActive(long id) {
        return store.find(id).map(People::person).filter(Person::active);
    }

    @Transactional(readOnly = true)
    public boolean hasOwner() {
        return store.countOwners() > 0;
    }

    /** Whether the first owner's link was made and still holds. */
    @Transactional(readOnly = true)
    public boolean hasFirstOwnersLink() {
        return store.hasFirstOwnersLink(Instant.now());
    }

    /** A new link for the first owner; the one before holds no more. */
    public void inviteFirstOwner(String secretHash) {
        store.lock();
        store.replaceLink(null, secretHash, Instant.now().plus(LINK_HOLDS));
    }

    /**
     * A person who may choose a password by the link.
     *
     * @throws AccountRefusedException when it is no name, or taken
     */
    public Person add(String name, Role role, String secretHash) {
        Person person = insert(name, role);
        store.replaceLink(person.id(), secretHash, Instant.now().plus(LINK_HOLDS));
        return person;
    }

    private Person insert(String name, Role role) {
        String plain = name.strip();
        if (plain.isEmpty()
                || plain.length() > LONGEST_NAME
                // HTTP Basic ends a name with a colon.
                || plain.codePoints().anyMatch(c -> Character.isISOControl(c) || c == ':')) {
            throw new AccountRefusedException(Phrase.of("accounts.name-rule", LONGEST_NAME));
        }
        store.lock();
        if (store.findByName(plain).isPresent()) {
            throw new AccountRefusedException(Phrase.of("accounts.name-taken", plain));
        }
        return get(store.insert(plain, role.code(), Instant.now()));
    }

    /** A new link to choose a password; the old password holds until then. */
    public Person invite(long id, String secretHash) {
        store.lock();
        Person person = get(id);
        store.replaceLink(id, secretHash, Instant.now().plus(LINK_HOLDS));
        return person;
    }

    /**
     * @throws AccountRefusedException when no owner would be left
     */
    public void changeRole(long id, Role role) {
        store.lock();
        get(id);
        store.setRole(id, role.code());
        store.endSessions(id);
        requireAnOwner();
    }

    /**
     * @throws AccountRefusedException when no owner would be left
     */
    public void setActive(long id, boolean active) {
        store.lock();
        get(id);
        store.setActive(id, active);
        store.endSessions(id);
        if (!active) {
            store.deleteLink(id);
        }
        requireAnOwner();
    }

    private void requireAnOwner() {
        if (store.countOwners() == 0) {
            throw new AccountRefusedException(Phrase.of("accounts.last-owner"));
        }
    }

    /**
     * @throws UnknownLinkException when the link does not hold
     */
    @Transactional(readOnly = true)
    public Invited getInvited(String secretHash) {
        OptionalLong account = link(secretHash);
        return new Invited(
                account.isEmpty()
                        ? Optional.empty()
                        : Optional.of(get(account.getAsLong()).name()));
    }

    private OptionalLong link(String secretHash) {
        return store.findLink(secretHash, Instant.now()).orElseThrow(UnknownLinkException::new);
    }

    /**
     * Uses a link.
     *
     * @param name of the first owner; left aside for all others
     * @throws UnknownLinkException when the link does not hold
     * @throws AccountRefusedException when name or password will not do; the link still holds then
     */
    public void choosePassword(String secretHash, String name, String password) {
        store.lock();
        OptionalLong account = link(secretHash);
        Optional<Text> fault = Passwords.findFault(password);
        if (fault.isPresent()) {
            throw new AccountRefusedException(fault.get());
        }
        long id = account.isPresent() ? account.getAsLong() : insertFirstOwner(name);
        store.setPassword(id, passwords.hash(password));
        store.endSessions(id);
        store.deleteLink(account.isPresent() ? id : null);
    }

    private long insertFirstOwner(String name) {
        if (store.countOwners() > 0) {
            throw new UnknownLinkException();
        }
        return insert(name, Role.OWNER).id();
    }

    private Person get(long id) {
        return store.find(id).map(People::person).orElseThrow(() -> new UnknownPersonException(id));
    }
}
