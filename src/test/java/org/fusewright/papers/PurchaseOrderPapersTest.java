package org.fusewright.papers;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.helger.ubl21.UBL21Marshaller;

import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.order.PurchaseOrder;
import org.fusewright.core.order.PurchaseOrder.OrderLine;
import org.fusewright.core.pricing.PriceList;
import org.fusewright.core.words.Wording;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.w3c.dom.Document;
import org.xml.sax.SAXException;

import java.io.ByteArrayInputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.transform.Source;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import javax.xml.xpath.XPath;
import javax.xml.xpath.XPathFactory;

class PurchaseOrderPapersTest {

    private static PurchaseOrder order(CurrencyUnit currency, OrderLine... lines) {
        return new PurchaseOrder(
                "P-2026-0007",
                Optional.of(LocalDate.of(2026, 11, 25)),
                Optional.of(LocalDate.of(2026, 12, 9)),
                "Highmoor Fuse Bench",
                "SKERROW",
                "Skerrow Loom Supplies",
                currency,
                List.of(lines));
    }

    private static OrderLine line(
            int number, String title, String unit, int quantity, String price, CurrencyUnit in) {
        BigMoney unitPrice = BigMoney.of(in, new BigDecimal(price));
        return new OrderLine(
                number,
                new PartNumber("P-" + number),
                title,
                unit,
                1,
                quantity,
                unitPrice,
                PriceList.extend(unitPrice, BigDecimal.valueOf(quantity)));
    }

    /** The order of the UBL 2.1 example: 120 at 50 and 15 at 15 Swedish crowns. */
    static PurchaseOrder published() {
        CurrencyUnit sek = CurrencyUnit.of("SEK");
        return order(
                sek,
                line(1, "Red terminals", "each", 120, "50", sek),
                line(2, "Wire, black", "m", 15, "15", sek));
    }

    /** UBL-Order-2.1-Example of OASIS; its allowance and charge of 100 each cancel. */
    @Test
    void sumsAsThePublishedOrderDoes() throws Exception {
        Document xml = parse(UblOrder.print(published()));
        assertThat(
                        text(
                                xml,
                                "//*[local-name()='LineItem'][1]/*[local-name()='LineExtensionAmount']",
                                1))
                .isEqualByComparingTo("6000");
        assertThat(
                        text(
                                xml,
                                "//*[local-name()='LineItem']/*[local-name()='LineExtensionAmount']",
                                2))
                .isEqualByComparingTo("225");
        String total = "//*[local-name()='AnticipatedMonetaryTotal']/*[local-name()='%s']";
        assertThat(text(xml, total.formatted("LineExtensionAmount"), 1))
                .isEqualByComparingTo("6225");
        assertThat(text(xml, total.formatted("PayableAmount"), 1)).isEqualByComparingTo("6225");
    }

    /** Units as in facts/unece_rec20_units.csv: C62 one, MTR metre. */
    @Test
    void namesUnitsByRecommendation20() {
        assertThat(new String(UblOrder.print(published()), StandardCharsets.UTF_8))
                .contains(
                        "<cbc:Quantity unitCode=\"C62\">120</cbc:Quantity>",
                        "<cbc:Quantity unitCode=\"MTR\">15</cbc:Quantity>",
                        "<cbc:DocumentCurrencyCode>SEK</cbc:DocumentCurrencyCode>",
                        "<cbc:EndDate>2026-12-09</cbc:EndDate>");
    }

    /** The schema as OASIS publishes it, read by the JDK's own validator. */
    @Test
    void isValidByTheSchema() throws Exception {
        SchemaFactory factory = SchemaFactory.newInstance(XMLConstants.W3C_XML_SCHEMA_NS_URI);
        Source[] files =
                UBL21Marshaller.getAllOrderXSDs().stream()
                        .map(file -> new StreamSource(file.getAsURL().toString()))
                        .toArray(Source[]::new);
        Schema schema = factory.newSchema(files);
        byte[] xml = UblOrder.print(published());
        schema.newValidator().validate(new StreamSource(new ByteArrayInputStream(xml)));
        String broken =
                new String(xml, StandardCharsets.UTF_8)
                        .replace("<cbc:IssueDate>2026", "<cbc:IssueDate>x");
        assertThatThrownBy(
                        () ->
                                schema.newValidator()
                                        .validate(
                                                new StreamSource(
                                                        new ByteArrayInputStream(
                                                                broken.getBytes(
                                                                        StandardCharsets.UTF_8)))))
                .isInstanceOf(SAXException.class);
    }

    @Test
    void defusesFormulasInTheTable() {
        CurrencyUnit eur = CurrencyUnit.EUR;
        String table =
                new String(
                        PurchaseOrderTable.print(
                                order(eur, line(1, "=1+1", "each", 3, "0.125", eur))),
                        StandardCharsets.UTF_8);
        assertThat(table)
                .isEqualTo(
                        """
                        order,line,part,title,quantity,unit,packs,packSize,unitPrice,price,currency\r
                        P-2026-0007,1,P-1,'=1+1,3,each,3,1,0.125,0.38,EUR\r
                        P-2026-0007,,,Total,,,,,,0.38,EUR\r
                        """);
    }

    @ParameterizedTest
    @EnumSource
    void printsTheSameBytesWithEveryLineAndTheTotal(Paper paper) throws Exception {
        byte[] pdf = PurchaseOrderPaper.print(published(), paper, Wording.ENGLISH);
        assertThat(PurchaseOrderPaper.print(published(), paper, Wording.ENGLISH)).isEqualTo(pdf);
        Path kept = Path.of("target", "order-" + paper + ".pdf");
        Files.write(kept, pdf);
        PrintedPaper printed = PrintedPaper.of(pdf);
        assertThat(printed.text())
                .contains("P-2026-0007", "Skerrow Loom Supplies", "6000.00", "225.00", "6225.00")
                .contains("Wanted by 2026-12-09", "Page 1 of 1");
    }

    private static Document parse(byte[] xml) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(new ByteArrayInputStream(xml));
    }

    private static BigDecimal text(Document xml, String path, int place) throws Exception {
        XPath xpath = XPathFactory.newInstance().newXPath();
        return new BigDecimal(xpath.evaluate("(" + path + ")[" + place + "]", xml).strip());
    }
}
