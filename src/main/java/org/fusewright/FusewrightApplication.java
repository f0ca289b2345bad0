package org.fusewright;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** The service: pages and API on one address, its database in the data folder. */
@SpringBootApplication
public class FusewrightApplication {
    public static void main(String[] args) {
        SpringApplication.run(FusewrightApplication.class, args);
    }
}
