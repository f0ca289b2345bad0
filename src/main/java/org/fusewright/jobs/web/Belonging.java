package org.fusewright.jobs.web;

import org.fusewright.core.catalog.Part;
import org.fusewright.core.check.Check;
import org.fusewright.core.kit.Cavity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitBlock;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.kit.KitFeed;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.PartLine;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What belongs together on a job's page, in tokens such as "circuit:pump". The first token of an
 * element names it, the others name what it belongs to; an element that is pointed at lights those
 * that carry its name, and those whose names it carries.
 */
public final class Belonging {
    private final Map<String, Set<String>> users = new HashMap<>();
    private final Map<String, String> owners = new HashMap<>();
    private final Map<String, Set<String>> bags = new HashMap<>();

    Belonging(Kit kit) {
        for (KitFeed feed : kit.feeds()) {
            String owner = feed(feed.sized().id());
            feed.sized().mainDevice().ifPresent(device -> use(device, owner));
            own(feed.leads(), owner);
        }
        for (KitCircuit circuit : kit.circuits()) {
            own(circuit.leads(), circuit(circuit.sized().id()));
        }
        kit.blocks().forEach(this::use);
        for (PartLine line : kit.parts()) {
            line.contains()
                    .forEach(
                            content ->
                                    bags.computeIfAbsent(
                                                    content.part().value(),
                                                    number -> new LinkedHashSet<>())
                                            .add(part(line.part())));
        }
    }

    private void own(List<KitLead> leads, String owner) {
        for (KitLead lead : leads) {
            owners.put(lead.lead().id(), owner);
            use(lead.lead().wire(), owner);
        }
    }

    private void use(KitBlock block) {
        String token = block(block.id());
        use(block.block(), token);
        use(block.cap(), token);
        block.wedge().ifPresent(wedge -> use(wedge, token));
        block.seats().forEach(seat -> use(seat.part(), circuit(seat.circuit())));
        for (Cavity cavity : block.cavities()) {
            cavity.plug().ifPresent(plug -> use(plug, token));
            cavity.occupant()
                    .ifPresent(
                            in -> {
                                in.terminal().ifPresent(part -> use(part, circuit(in.circuit())));
                                in.seal().ifPresent(part -> use(part, circuit(in.circuit())));
                            });
        }
    }

    private void use(Part part, String user) {
        users.computeIfAbsent(part.number().value(), number -> new LinkedHashSet<>()).add(user);
    }

    static String circuit(String id) {
        return token("circuit", id);
    }

    static String feed(String id) {
        return token("feed", id);
    }

    static String block(String id) {
        return token("block", id);
    }

    private static String part(Part part) {
        return token("part", part.number().value());
    }

    private static String token(String kind, String id) {
        return kind + ":" + Addresses.encoded(id).replace("%2F", "/");
    }

    /** What a check speaks of; empty for the whole job. */
    public static String of(Check check) {
        String id = check.subject().id();
        return switch (check.subject().scope()) {
            case CIRCUIT -> circuit(id);
            case FEED -> feed(id);
            case BLOCK -> block(id);
            case JOB -> "";
        };
    }

    /** A part and the bags that hold it. */
    private void add(Set<String> tokens, Part part) {
        tokens.add(part(part));
        tokens.addAll(bags.getOrDefault(part.number().value(), Set.of()));
    }

    /** A device or relay is lit as its circuit. */
    String of(KitBlock.Seat seat) {
        Set<String> tokens = new LinkedHashSet<>(Set.of(circuit(seat.circuit())));
        add(tokens, seat.part());
        return String.join(" ", tokens);
    }

    String of(Cavity cavity) {
        Set<String> tokens = new LinkedHashSet<>(Set.of(token("cavity", cavity.id())));
        cavity.plug().ifPresent(plug -> add(tokens, plug));
        cavity.occupant()
                .ifPresent(
                        in -> {
                            String lead = in.lead().id();
                            tokens.add(token("lead", lead));
                            tokens.add(circuit(in.circuit()));
                            tokens.add(owners.getOrDefault(lead, circuit(in.circuit())));
                            in.terminal().ifPresent(terminal -> add(tokens, terminal));
                            in.seal().ifPresent(seal -> add(tokens, seal));
                            add(tokens, in.lead().wire());
                        });
        return String.join(" ", tokens);
    }

    /** A line of the cut list. */
    public String of(KitLead lead) {
        return String.join(
                " ",
                token("lead", lead.lead().id()),
                owners.get(lead.lead().id()),
                part(lead.lead().wire()));
    }

    /** A line of the parts list; a bag is used where what it holds is used. */
    public String of(PartLine line) {
        Stream<String> numbers =
                Stream.concat(
                        Stream.of(line.part().number().value()),
                        line.contains().stream().map(content -> content.part().value()));
        Set<String> tokens = new LinkedHashSet<>(Set.of(part(line.part())));
        numbers.map(number -> users.getOrDefault(number, Set.of()))
                .flatMap(Collection::stream)
                .forEach(tokens::add);
        return String.join(" ", tokens);
    }
}
