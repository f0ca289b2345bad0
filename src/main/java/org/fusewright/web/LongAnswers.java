package org.fusewright.web;

import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.stereotype.Component;

/**
 * Sends a long answer, such as a kit, in a few pieces: with the server's usual 8 KB it takes a
 * dozen, and each of them costs both ends some microseconds.
 */
@Component
class LongAnswers implements WebServerFactoryCustomizer<TomcatServletWebServerFactory> {
    private static final int PIECE_BYTES = 32 * 1024;

    @Override
    public void customize(TomcatServletWebServerFactory factory) {
        factory.addConnectorCustomizers(
                connector ->
                        connector.setProperty(
                                "socket.appWriteBufSize", Integer.toString(PIECE_BYTES)));
    }
}
