package org.fusewright.papers;

import org.fusewright.core.kit.Kit;
import org.fusewright.core.sizing.SizedFeed;
import org.fusewright.core.sizing.SizedSplice;
import org.fusewright.core.words.Unit;

import java.util.List;
import java.util.stream.Stream;

/**
 * What lies outside the blocks: the main device of each feed, what each feed leaves of the
 * battery's voltage, and the splices.
 */
final class FeedsSection {

    private static final List<Table.Column> FEEDS =
            List.of(
                    Table.Column.left("print.feeds.feed", 40),
                    Table.Column.left("print.feeds.main-device", 30),
                    Table.Column.left("print.column.rating", 28),
                    Table.Column.left("print.feeds.holder", 30),
                    Table.Column.right("print.feeds.to-source", 20));

    private static final List<Table.Column> REMAINS =
            List.of(
                    Table.Column.left("print.feeds.feed", 40),
                    Table.Column.right("print.feeds.at-battery", 36),
                    Table.Column.right("print.feeds.at-end", 36),
                    Table.Column.right("print.feeds.at-start", 36));

    private static final List<Table.Column> SPLICES =
            List.of(
                    Table.Column.unnamed(4),
                    Table.Column.left("print.feeds.splice", 36),
                    Table.Column.left("print.column.part", 25),
                    Table.Column.right("print.feeds.leads", 12),
                    Table.Column.left("print.feeds.which-leads", 75));

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
        Table feeds =
                new Table(
                        sheet,
                        Headings.section(sheet, sheet.say("print.feeds.main-devices")),
                        FEEDS);
        kit.feeds().forEach(feed -> addFeed(feeds, feed.sized()));
    }

    private void printRemains() {
        Table remains =
                new Table(
                        sheet, Headings.section(sheet, sheet.say("print.feeds.remains")), REMAINS);
        kit.feeds().forEach(feed -> addRemains(remains, feed.sized()));
    }

    void printSplices() {
        Table splices =
                new Table(
                        sheet, Headings.section(sheet, sheet.say("print.feeds.splices")), SPLICES);
        Stream.concat(
                        kit.feeds().stream().flatMap(feed -> feed.sized().splices().stream()),
                        kit.circuits().stream()
                                .flatMap(circuit -> circuit.sized().splices().stream()))
                .forEach(splice -> addSplice(splices, splice));
    }

    private void addFeed(Table table, SizedFeed feed) {
        feed.mainDevice()
                .ifPresent(
                        device ->
                                table.row(
                                        Cell.of(
                                                sheet.say(
                                                        "print.feeds.terminal",
                                                        feed.id(),
                                                        feed.feed().terminal())),
                                        Cell.of(Style.STRONG, device.number().value()),
                                        Cell.of(new Devices(sheet).ratingAndColour(device)),
                                        Cell.of(
                                                Style.STRONG,
                                                feed.holder()
                                                        .map(holder -> holder.number().value())
                                                        .orElseGet(
                                                                () ->
                                                                        sheet.say(
                                                                                "print.part.none"))),
                                        Cell.of(
                                                sheet.figures()
                                                        .measure(
                                                                feed.feed().sourceDistanceM(),
                                                                Unit.METRE))));
    }

    private void addRemains(Table table, SizedFeed feed) {
        feed.remains()
                .ifPresent(
                        left ->
                                table.row(
                                        Cell.of(feed.id()),
                                        Cell.of(sheet.figures().volts(left.batteryV())),
                                        Cell.of(sheet.figures().volts(left.busV())),
                                        Cell.of(sheet.figures().volts(left.busAtStartV()))));
    }

    private List<String> leadsAt(SizedSplice splice) {
        return kit.leads()
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
                Cell.of(Places.compact(leadsAt(splice), sheet.wording())));
    }
}
