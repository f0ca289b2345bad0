package org.fusewright.setup;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

import java.net.URI;
import java.net.URISyntaxException;

/** Tells the person who started the service where to find it, once it answers. */
@Component
class ReadyLine {
    private static final Logger log = LoggerFactory.getLogger(ReadyLine.class);

    @EventListener
    void print(ApplicationReadyEvent ready) throws URISyntaxException {
        Environment environment = ready.getApplicationContext().getEnvironment();
        Integer port = environment.getProperty("local.server.port", Integer.class);
        if (port != null) {
            String host = environment.getRequiredProperty("server.address");
            log.info(
                    "Fusewright is ready: {}", new URI("http", null, host, port, null, null, null));
        }
    }
}
