package org.fusewright.core.pricing;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.catalogs.load.CatalogFolder;
import org.fusewright.core.catalog.Catalog;
import org.fusewright.core.catalog.DeviceKind;
import org.fusewright.core.catalog.PartNumber;
import org.fusewright.core.catalog.Wire;
import org.joda.money.BigMoney;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.nio.file.Path;

class StockTest {

    private static final Catalog SAMPLE = CatalogFolder.read(Path.of("catalog-sample")).catalog();
    private static final Stock STOCK = Stock.of(SAMPLE, CurrencyUnit.EUR);

    /**
     * Largest outside diameters of ISO 6722 thin-wall leads as data sheets quote them. Where two
     * seals overlap, the one with room for a lead thinner than its largest diameter is right.
     */
    @ParameterizedTest(name = "{0}: at most {1} mm, seal {2}")
    @CsvSource({
        "LTM-0.5-RD, 1.6, WDS-1",
        "LTM-0.75-RD, 1.9, WDS-2",
        "LTM-1-RD, 2.1, WDS-2",
        "LTM-1.5-RD, 2.4, WDS-3",
        "LTM-2.5-RD, 3.0, WDS-4",
        "LTM-4-RD, 3.7, WDS-5",
        "LTM-6-RD, 4.3, WDS-6",
    })
    void findsTheSealThatAlsoClosesOnThinnerLeads(String number, double outsideMm, String seal) {
        Wire wire = (Wire) SAMPLE.getPart(new PartNumber(number));

        assertThat(wire.outsideMm()).isEqualTo(outsideMm);
        assertThat(STOCK.findSeal("Tansy", wire).orElseThrow().number().value()).isEqualTo(seal);
    }

    @Test
    void listsDevicesByRisingRating() {
        assertThat(STOCK.listBlockDevices(DeviceKind.FUSE))
                .extracting(device -> device.ratingA())
                .containsExactly(2.0, 3.0, 4.0, 5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0);
    }

    @Test
    void takesThePriceOfThePackThatIsBought() {
        // Skerrow: 0.320 in packs of 10; Old Quay: 0.253 from 50 on, and its pack holds 50.
        assertThat(STOCK.prices().findUnitPrice(new PartNumber("WDJ-S")))
                .contains(BigMoney.parse("EUR 0.253"));
        assertThat(STOCK.prices().unitPriceMicros(new PartNumber("WDJ-S"))).isEqualTo(253_000);
    }
}
