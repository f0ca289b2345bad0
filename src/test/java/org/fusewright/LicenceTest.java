package org.fusewright;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

import java.nio.file.Path;

class LicenceTest {
    @Test
    void keepsTheFullTextOfTheLicence() {
        assertThat(Path.of("LICENSE"))
                .content()
                .contains("Apache License", "Version 2.0, January 2004", "END OF TERMS");
    }
}
