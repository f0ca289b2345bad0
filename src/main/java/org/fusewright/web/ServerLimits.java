package org.fusewright.web;

import org.springframework.boot.tomcat.servlet.TomcatServletWebServerFactory;
import org.springframework.boot.web.server.WebServerFactoryCustomizer;
import org.springframework.stereotype.Component;

/** Lets the form of a long job through: each of its fields is a parameter. */
@Component
class ServerLimits implements WebServerFactoryCustomizer<TomcatServletWebServerFactory> {
    private static final int MAX_PARAMETERS = 20_000;

    @Override
    public void customize(TomcatServletWebServerFactory factory) {
        factory.addConnectorCustomizers(
                connector -> connector.setMaxParameterCount(MAX_PARAMETERS));
    }
}
