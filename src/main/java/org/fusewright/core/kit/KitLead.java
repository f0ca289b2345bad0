package org.fusewright.core.kit;

import org.fusewright.core.sizing.Lead;

/**
 * A lead with both ends in the words of the drawing: a cavity ("B1-2b"), a splice, a place.
 *
 * @param owner the id of the circuit or feed that it belongs to
 */
public record KitLead(Lead lead, String owner, String from, String to) {}
