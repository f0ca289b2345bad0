package org.fusewright.catalogs;

import org.fusewright.catalogs.store.StockMoves;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import java.time.Instant;
import java.util.List;

/**
 * The moves of stock, only ever added to: what lies on the shelf is their sum, so of two people who
 * book at once neither undoes the other.
 */
@Service
public class StockLedger {

    private final StockMoves moves;

    StockLedger(StockMoves moves) {
        this.moves = moves;
    }

    /** Adds moves to what the caller's transaction does: all of it or nothing. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void book(List<StockMove> booked, Instant at) {
        moves.add(booked, at);
    }
}
