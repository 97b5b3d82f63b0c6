package org.salvedge.ledger;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that a test sets. */
final class TestClock extends Clock {
    private Instant now;

    TestClock(String now) {
        this.now = Instant.parse(now);
    }

    void set(String instant) {
        now = Instant.parse(instant);
    }

    void set(Instant instant) {
        now = instant;
    }

    void forward(Duration by) {
        now = now.plus(by);
    }

    @Override
    public Instant instant() {
        return now;
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return Clock.fixed(now, zone);
    }
}
