package org.fusewright.core.job;

/**
 * One thing that is wrong with a job.
 *
 * @param pointer where, as an RFC 6901 pointer into the job document
 * @param detail what is wrong and what is allowed
 */
public record JobProblem(String pointer, String detail) {}
