package org.fusewright.accounts;

/**
 * Somebody with an account.
 *
 * @param name by which the person logs in and by which changes are kept; it never changes
 * @param active whether the person may log in
 * @param hasPassword whether the person has chosen a password yet
 */
public record Person(long id, String name, Role role, boolean active, boolean hasPassword) {

    public boolean isOwner() {
        return role == Role.OWNER;
    }
}
