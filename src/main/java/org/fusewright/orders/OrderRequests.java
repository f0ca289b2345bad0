package org.fusewright.orders;

import org.fusewright.core.job.JobProblem;
import org.fusewright.core.job.MalformedJobException;
import org.fusewright.core.words.Unit;
import org.fusewright.jobs.load.Fields;
import org.fusewright.jobs.load.JsonTree;
import org.fusewright.jobs.load.Range;
import org.fusewright.jobs.load.TextForm;
import org.joda.money.CurrencyUnit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads what is asked of orders as JSON. */
public final class OrderRequests {
    private static final Range PERCENT = Range.from(0, 100, Unit.PERCENT);
    private static final Range LINES = Range.whole(1, 2_000, "things.lines");
    private static final Range QUANTITY = Range.above(0, 10_000_000, Unit.NONE);
    private static final int QUANTITY_DECIMALS = 3;
    private static final int PERCENT_DECIMALS = 2;

    private OrderRequests() {}

    /**
     * @throws MalformedJobException with all that is wrong
     */
    public static ProposalWishes readWishes(
            byte[] json, List<CurrencyUnit> currencies, LocalDate today) {
        JsonTree tree = JsonTree.parse(json);
        List<JobProblem> problems = new ArrayList<>(tree.problems());
        WishesForm form;
        try (Fields fields = Fields.of(tree.root(), "", problems)) {
            form =
                    new WishesForm(
                            fields.findText("currency", TextForm.ID).orElse(""),
                            fields.findText("wantedBy", TextForm.ID).orElse(""),
                            percent(fields));
        }
        Optional<ProposalWishes> wishes = Optional.empty();
        try {
            wishes = Optional.of(form.read(currencies, today));
        } catch (MalformedJobException malformed) {
            problems.addAll(malformed.problems());
        }
        if (!problems.isEmpty()) {
            throw new MalformedJobException(problems);
        }
        return wishes.orElseThrow();
    }

    private static String percent(Fields fields) {
        OptionalDouble percent = fields.findNumber("wirePercent", PERCENT);
        return percent.isEmpty()
                ? ""
                : BigDecimal.valueOf(percent.getAsDouble())
                        .setScale(PERCENT_DECIMALS, RoundingMode.HALF_UP)
                        .toPlainString();
    }

    /**
     * @throws MalformedJobException with all that is wrong
     */
    public static DeliveryNote readDelivery(byte[] json) {
        JsonTree tree = JsonTree.parse(json);
        List<JobProblem> problems = new ArrayList<>(tree.problems());
        DeliveryNote note;
        try (Fields fields = Fields.of(tree.root(), "", problems)) {
            String number = fields.getText("note", TextForm.TITLE, "?").strip();
            fields.require("lines", "wrong.give.received");
            note =
                    new DeliveryNote(
                            number,
                            fields.list(
                                    "lines",
                                    LINES,
                                    (node, at) -> {
                                        try (Fields line = Fields.of(node, at, problems)) {
                                            return line(line);
                                        }
                                    }));
        }
        if (!problems.isEmpty()) {
            throw new MalformedJobException(problems);
        }
        return note;
    }

    private static ReceivedLine line(Fields line) {
        String part = line.getText("part", TextForm.TITLE, "?");
        BigDecimal quantity = BigDecimal.valueOf(line.getNumber("quantity", QUANTITY));
        if (quantity.stripTrailingZeros().scale() > QUANTITY_DECIMALS) {
            line.report("quantity", "wrong.three-decimals");
        }
        return new ReceivedLine(part, quantity);
    }
}
