package org.fusewright.setup;

import org.springframework.boot.health.actuate.endpoint.AdditionalHealthEndpointPath;
import org.springframework.boot.health.actuate.endpoint.HealthEndpointGroup;
import org.springframework.boot.health.actuate.endpoint.HealthEndpointGroups;
import org.springframework.boot.health.actuate.endpoint.HealthEndpointGroupsPostProcessor;
import org.springframework.stereotype.Component;

import java.util.Set;

/**
 * Leaves the names of the groups out of the answer about the whole service, which is promised to be
 * its status and nothing else. The groups are there under their addresses all the same.
 */
@Component
class UnnamedHealthGroups implements HealthEndpointGroupsPostProcessor {
    @Override
    public HealthEndpointGroups postProcessHealthEndpointGroups(HealthEndpointGroups groups) {
        return new HealthEndpointGroups() {
            @Override
            public HealthEndpointGroup getPrimary() {
                return groups.getPrimary();
            }

            @Override
            public Set<String> getNames() {
                return Set.of();
            }

            @Override
            public HealthEndpointGroup get(String name) {
                return groups.get(name);
            }

            @Override
            public HealthEndpointGroup get(AdditionalHealthEndpointPath path) {
                return groups.get(path);
            }
        };
    }
}
