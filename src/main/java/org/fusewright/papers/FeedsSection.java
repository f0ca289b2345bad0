package org.fusewright.papers;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.sizing.SizedFeed;
import org.fusewright.core.sizing.SizedSplice;

import java.util.List;
import java.util.stream.Stream;

/**
 * What lies outside the blocks: the main device of each feed, what each feed leaves of the
 * battery's voltage, and the splices.
 */
final class FeedsSection {

    private static final List<Table.Column> FEEDS =
            List.of(
                    Table.Column.left("Feed", 40),
                    Table.Column.left("Main device", 30),
                    Table.Column.left("Rating", 28),
                    Table.Column.left("In holder", 30),
                    Table.Column.right("To the source", 20));

    private static final List<Table.Column> REMAINS =
            List.of(
                    Table.Column.left("Feed", 40),
                    Table.Column.right("At the battery", 36),
                    Table.Column.right("At the feed's end", 36),
                    Table.Column.right("There at the worst start", 36));

    private static final List<Table.Column> SPLICES =
            List.of(
                    Table.Column.left("", 4),
                    Table.Column.left("Splice", 36),
                    Table.Column.left("Part", 25),
                    Table.Column.right("Leads", 12),
                    Table.Column.left("Which leads meet", 75));

    private final Sheet sheet;
    private final Kit kit;

    FeedsSection(Sheet sheet, Kit kit) {
        this.sheet = sheet;
        this.kit = kit;
    }

    void print() {
        printMainDevices();
        printRemains();
        printSplices();
    }

    void printMainDevices() {
        Table feeds = new Table(sheet, Headings.section(sheet, "Main devices"), FEEDS);
        kit.feeds().forEach(feed -> addFeed(feeds, feed.sized()));
    }

    private void printRemains() {
        Table remains =
                new Table(
                        sheet,
                        Headings.section(
                                sheet,
                                "What remains of the battery's voltage, engine off and everything"
                                        + " running"),
                        REMAINS);
        kit.feeds().forEach(feed -> addRemains(remains, feed.sized()));
    }

    void printSplices() {
        Table splices = new Table(sheet, Headings.section(sheet, "Splices"), SPLICES);
        Stream.concat(
                        kit.feeds().stream().flatMap(feed -> feed.sized().splices().stream()),
                        kit.circuits().stream()
                                .flatMap(circuit -> circuit.sized().splices().stream()))
                .forEach(splice -> addSplice(splices, splice));
    }

    private static void addFeed(Table table, SizedFeed feed) {
        feed.mainDevice()
                .ifPresent(
                        device ->
                                table.row(
                                        Cell.of(
                                                feed.id()
                                                        + " · terminal "
                                                        + feed.feed().terminal()),
                                        Cell.of(Style.STRONG, device.number().value()),
                                        Cell.of(Devices.ratingAndColour(device)),
                                        Cell.of(
                                                Style.STRONG,
                                                feed.holder()
                                                        .map(holder -> holder.number().value())
                                                        .orElse("none")),
                                        Cell.of(Figures.of(feed.feed().sourceDistanceM()) + " m")));
    }

    private static void addRemains(Table table, SizedFeed feed) {
        feed.remains()
                .ifPresent(
                        left ->
                                table.row(
                                        Cell.of(feed.id()),
                                        Cell.of(Figures.volts(left.batteryV())),
                                        Cell.of(Figures.volts(left.busV())),
                                        Cell.of(Figures.volts(left.busAtStartV()))));
    }

    private List<String> leadsAt(SizedSplice splice) {
        return Stream.concat(
                        kit.feeds().stream().flatMap(feed -> feed.leads().stream()),
                        kit.circuits().stream().flatMap(circuit -> circuit.leads().stream()))
                .filter(lead -> lead.from().equals(splice.id()) || lead.to().equals(splice.id()))
                .map(lead -> lead.lead().id())
                .toList();
    }

    private void addSplice(Table table, SizedSplice splice) {
        table.row(
                Cell.TICK_BOX,
                Cell.of(splice.id()),
                Cell.of(Style.STRONG, splice.part().number().value()),
                Cell.of(Style.STRONG, Integer.toString(splice.leads())),
                Cell.of(Places.compact(leadsAt(splice))));
    }
}
