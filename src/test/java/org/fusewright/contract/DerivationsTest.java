package org.fusewright.contract;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.ezylang.evalex.EvaluationException;
import com.ezylang.evalex.Expression;
import com.ezylang.evalex.parser.ParseException;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.check.Check;
import org.fusewright.core.check.CheckCode;
import org.fusewright.core.formula.Derivation;
import org.fusewright.core.formula.Quantity;
import org.fusewright.core.kit.Kit;
import org.fusewright.core.kit.KitCircuit;
import org.fusewright.core.kit.KitFeed;
import org.fusewright.core.kit.KitLead;
import org.fusewright.core.kit.KitPlanner;
import org.fusewright.core.kit.PartLine;
import org.fusewright.core.sizing.DeadShort;
import org.fusewright.core.sizing.SizedCircuit;
import org.fusewright.core.why.Explanation;
import org.fusewright.core.why.Why;
import org.fusewright.core.words.Language;
import org.fusewright.core.words.UnitSystem;
import org.fusewright.core.words.Wording;
import org.fusewright.jobs.load.JobReader;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;

/**
 * The formula that explains a figure gives that figure: EvalEx, an expression library of others,
 * reads what is printed and works it out with the values that are printed beside it.
 */
class DerivationsTest {
    private static final int GENERATED = 300;
    private static final double CLOSE = 1e-9;
    private static final Wording GERMAN = new Wording(Language.GERMAN, UnitSystem.METRIC);

    /** Rules that only hold two figures against each other: counted, read off a curve, stated. */
    private static final Set<CheckCode> PLAIN_COMPARISONS =
            EnumSet.of(
                    CheckCode.INRUSH,
                    CheckCode.SHORT_CIRCUIT_WITHSTAND,
                    CheckCode.TERMINAL_CURRENT,
                    CheckCode.TERMINAL_FIT,
                    CheckCode.SEAL_FIT,
                    CheckCode.CAP_CLEARANCE,
                    CheckCode.SELECTIVITY,
                    CheckCode.SOURCE_PROTECTION,
                    CheckCode.WEDGE_FITTED,
                    CheckCode.SPLICE_PLACEMENT,
                    CheckCode.PLACE_KEPT);

    private static List<Kit> kits;

    @BeforeAll
    static void plan() throws IOException {
        KitPlanner planner = KitPlanner.of(CatalogFolder.read(Path.of("catalog-sample")).catalog());
        List<Kit> planned = new ArrayList<>();
        try (Stream<Path> samples = Files.list(Path.of("catalog-sample/jobs"))) {
            for (Path sample : samples.sorted().toList()) {
                planned.add(planner.plan(JobReader.read(Files.readAllBytes(sample)).getJob()));
            }
        }
        LongStream.range(0, GENERATED)
                .mapToObj(seed -> JobReader.read(JobGenerator.generate(seed)).getJob())
                .forEach(job -> planned.add(planner.plan(job)));
        kits = List.copyOf(planned);
    }

    private static Explanation explained(Kit kit, String figure) {
        return Why.find(kit, figure)
                .orElseThrow(() -> new AssertionError("nothing explains " + figure));
    }

    private static String nameOf(Check check) {
        return "check:" + check.code().code() + ":" + check.subject().text().english();
    }

    private static double evaluated(Derivation derivation) {
        Expression expression = new Expression(derivation.expression().text());
        for (Quantity quantity : derivation.quantities()) {
            expression.with(quantity.name(), quantity.value());
        }
        try {
            return expression.evaluate().getNumberValue().doubleValue();
        } catch (EvaluationException | ParseException e) {
            throw new AssertionError(derivation.expression().text(), e);
        }
    }

    private static void holds(Kit kit, String figure, Derivation derivation, double shown) {
        String what = kit.job().reference() + " " + figure + ": " + derivation.expression().text();
        assertThat(evaluated(derivation))
                .as(what)
                .isCloseTo(shown, within(CLOSE * Math.max(1e-3, Math.abs(shown))));
        assertThat(derivation.result())
                .as(what)
                .isCloseTo(shown, within(CLOSE * Math.max(1e-3, Math.abs(shown))));
    }

    @Test
    void giveBothFiguresOfEachCheck() {
        Set<CheckCode> derived = EnumSet.noneOf(CheckCode.class);
        Set<CheckCode> met = EnumSet.noneOf(CheckCode.class);
        for (Kit kit : kits) {
            for (Check check : kit.checks()) {
                Explanation why = explained(kit, nameOf(check));
                met.add(check.code());
                why.value().ifPresent(value -> holds(kit, nameOf(check), value, check.value()));
                why.limit().ifPresent(limit -> holds(kit, nameOf(check), limit, check.limit()));
                if (why.value().isPresent() || why.limit().isPresent()) {
                    derived.add(check.code());
                }
                assertThat(
                                why.value().isPresent() && why.limit().isPresent()
                                        || why.sources().isPresent())
                        .as(nameOf(check))
                        .isTrue();
                why.sources()
                        .ifPresent(
                                sources ->
                                        assertThat(GERMAN.say(sources))
                                                .isNotEqualTo(sources.english()));
            }
        }

        assertThat(met).isEqualTo(EnumSet.allOf(CheckCode.class));
        assertThat(derived).isEqualTo(EnumSet.complementOf(EnumSet.copyOf(PLAIN_COMPARISONS)));
    }

    @Test
    void giveTheCurrentsOfCircuitsAndFeeds() {
        for (Kit kit : kits) {
            for (KitCircuit circuit : kit.circuits()) {
                SizedCircuit sized = circuit.sized();
                holds(kit, "running:" + sized.id(), sized.runningA());
                holds(kit, "start:" + sized.id(), sized.inrushA());
                if (sized.study().isPresent()) {
                    for (DeadShort dead : sized.study().get().deadShorts()) {
                        holds(
                                kit,
                                "short:" + sized.id() + ":" + dead.place().code(),
                                dead.prospectiveA());
                    }
                }
            }
            for (KitFeed feed : kit.feeds()) {
                if (feed.sized().mainDevice().isPresent()) {
                    holds(kit, "feed:" + feed.sized().id(), feed.sized().runningA());
                }
            }
        }
    }

    private static void holds(Kit kit, String figure, double shown) {
        holds(kit, figure, explained(kit, figure).value().orElseThrow(), shown);
    }

    @Test
    void giveWhatToCutAndWhatEachLeadCarriesAndLoses() {
        for (Kit kit : kits) {
            for (KitLead lead : kit.leads().toList()) {
                holds(kit, "cut:" + lead.lead().id(), lead.lead().cut().value());
                holds(kit, "current:" + lead.lead().id(), lead.lead().currentA());
                holds(kit, "drop:" + lead.lead().id(), lead.lead().dropV());
            }
        }
    }

    @Test
    void givePricesAndMass() {
        for (Kit kit : kits) {
            holds(kit, "mass:", kit.totals().massG());
            holds(kit, "price:", kit.totals().parts().getAmount().doubleValue());
            for (PartLine line : kit.parts()) {
                String figure = "line:" + line.group().code() + ":" + line.part().number().value();
                double shown = line.extended().getAmount().doubleValue();
                assertThat(evaluated(explained(kit, figure).value().orElseThrow()))
                        .as(figure)
                        .isCloseTo(shown, within(0.005 + CLOSE));
            }
        }
    }
}
