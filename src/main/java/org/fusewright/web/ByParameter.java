package org.fusewright.web;

import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.enums.ParameterIn;
import io.swagger.v3.oas.annotations.media.Schema;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Describes who makes a change ({@link ChangedBy}) to the readers of the interface. */
@Target(ElementType.PARAMETER)
@Retention(RetentionPolicy.RUNTIME)
@Parameter(
        name = ChangedBy.PARAMETER,
        in = ParameterIn.QUERY,
        description = ChangedBy.WORDS,
        schema = @Schema(type = "string", minLength = 1, maxLength = ChangedBy.MAX_LENGTH))
public @interface ByParameter {}
