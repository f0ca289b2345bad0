package org.fusewright.accounts;

import java.util.Optional;

/**
 * For whom a link lets a password be chosen.
 *
 * @param name of the account; empty for the first owner, who chooses the name as well
 */
public record Invited(Optional<String> name) {}
