package org.fusewright.jobs.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.fusewright.core.catalog.Block;
import org.fusewright.core.catalog.Item;
import org.fusewright.core.catalog.PartNumber;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

class BlockRowsTest {
    @ParameterizedTest
    @CsvSource(
            textBlock =
                    """
                    1,  '',        1-1
                    3,  '',        1-3
                    4,  '1 3',     1-4
                    8,  '1 3 5 7', 1-4 5-8
                    8,  '',        1-4 5-8
                    8,  '2 4 6',   1-3 4-7 8-8
                    5,  '4',       1-3 4-5
                    10, '1 4 9',   1-3 4-7 8-10
                    """)
    void breaksALongBlockButNoRelayPair(int positions, String pairs, String rows) {
        assertThat(
                        BlockRows.of(block(positions, pairs)).stream()
                                .map(row -> row.first() + "-" + row.last())
                                .collect(Collectors.joining(" ")))
                .isEqualTo(rows);
    }

    private static Block block(int positions, String pairs) {
        List<Block.RelayPair> starts =
                Stream.of(pairs.split(" "))
                        .filter(first -> !first.isEmpty())
                        .map(first -> new Block.RelayPair(Integer.parseInt(first)))
                        .toList();
        return new Block(
                new Item(new PartNumber("BLK-1"), "Block", "", 20),
                "Tansy",
                positions,
                starts,
                60,
                30,
                9.6);
    }
}
