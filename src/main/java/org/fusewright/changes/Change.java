package org.fusewright.changes;

import tools.jackson.databind.JsonNode;

import java.util.Optional;

/**
 * A change with what was before and after it: of a row that was changed the columns that differ, of
 * one that was added or removed all of them.
 *
 * @param before empty when the row was added
 * @param after empty when it was removed
 */
public record Change(ChangeHead head, Optional<JsonNode> before, Optional<JsonNode> after) {}
