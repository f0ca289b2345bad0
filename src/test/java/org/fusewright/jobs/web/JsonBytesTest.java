package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

import tools.jackson.databind.json.JsonMapper;

import java.io.ByteArrayOutputStream;
import java.io.FilterOutputStream;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

class JsonBytesTest {
    private static final int SMALL = 8;

    /** All sorts of signs: controls, quotes, letters, umlauts, Greek, Chinese, emoji. */
    private static final int[] SIGNS = {
        0, 8, 9, 10, 12, 13, 31, ' ', '"', '\\', '/', 'a', 'Z', '~', 127, 128, 0xe4, 0x3a9, 0x2264,
        0x4e2d, 0x1f527
    };

    private static String written(JsonBytes json) {
        return new String(json.toBytes(), StandardCharsets.UTF_8);
    }

    @Test
    void keepsTextsThatAnotherReaderReads() {
        Random random = new Random(20_260_101);
        for (int i = 0; i < 2_000; i++) {
            StringBuilder text = new StringBuilder();
            int length = random.nextInt(40);
            while (text.length() < length) {
                boolean plain = random.nextInt(8) > 0;
                text.appendCodePoint(plain ? 'm' : SIGNS[random.nextInt(SIGNS.length)]);
            }
            JsonBytes json = new JsonBytes(SMALL);
            json.text(text.toString());
            assertThat(new JsonMapper().readTree(json.toBytes()).stringValue())
                    .isEqualTo(text.toString());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "-0.0, 0",
        "0.00004, 0",
        "-0.00004, 0",
        "0.00005, 0.0001",
        "0.1, 0.1",
        "-0.5, -0.5",
        "12, 12",
        "1000, 1000",
        "12.34567, 12.3457",
        "0.0203, 0.0203",
        "-7.25, -7.25",
        "9999.99996, 10000",
        "123456789.25, 123456789.25"
    })
    void writesNumbersToFourDecimalsAndNoIdleZero(double number, String expected) {
        JsonBytes json = new JsonBytes(SMALL);
        json.number(number);
        assertThat(written(json)).isEqualTo(expected);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "1.68", "0.420000", "-12.50", "1E+3", "1E-7"})
    void writesDecimalsInFull(BigDecimal number) {
        JsonBytes json = new JsonBytes(SMALL);
        json.decimal(number);
        assertThat(written(json)).isEqualTo(number.toPlainString());
    }

    @Test
    void sendsTheSameBytesInPieces() {
        ByteArrayOutputStream receiver = new ByteArrayOutputStream();
        List<Integer> pieces = new ArrayList<>();
        JsonBytes sent =
                new JsonBytes(
                        new FilterOutputStream(receiver) {
                            @Override
                            public void write(byte[] bytes, int from, int length) {
                                pieces.add(length);
                                receiver.write(bytes, from, length);
                            }
                        });
        JsonBytes kept = new JsonBytes(SMALL);
        for (JsonBytes json : List.of(sent, kept)) {
            json.startList();
            for (int i = 0; i < 9_000; i++) {
                json.startObject();
                json.name("n");
                json.whole(i);
                json.endObject();
            }
            json.endList();
        }
        sent.sendRest();
        assertThat(receiver.toByteArray()).isEqualTo(kept.toBytes());
        assertThat(pieces).hasSizeGreaterThan(2);
    }

    @Test
    void closesWhatItOpened() {
        JsonBytes json = new JsonBytes(SMALL);
        json.startObject();
        json.name("nothing");
        json.startList();
        json.endList();
        json.name("things");
        json.startList();
        json.startObject();
        json.endObject();
        json.whole(7);
        json.flag(true);
        json.flag(false);
        json.word("a,");
        json.endList();
        json.endObject();
        assertThat(written(json)).isEqualTo("{\"nothing\":[],\"things\":[{},7,true,false,\"a,\"]}");
    }
}
