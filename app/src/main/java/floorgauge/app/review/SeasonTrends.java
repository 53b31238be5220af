package floorgauge.app.review;

import floorgauge.app.store.Roster;
import floorgauge.app.store.SeasonFigures;
import floorgauge.app.store.Store;
import java.util.concurrent.atomic.AtomicReference;

/** The season's trends, made anew only when the store may tell others. Safe for use by several threads. */
final class SeasonTrends {

    private final Store store;
    private final AtomicReference<Made> made = new AtomicReference<>();

    SeasonTrends(Store store) {
        this.store = store;
    }

    /** Trends with what they were made from. */
    private record Made(String stamp, TrendsPage page) {}

    TrendsPage page() {
        String stamp = SeasonFigures.stamp(store);
        Made held = made.get();
        if (held == null || !held.stamp().equals(stamp)) {
            held = new Made(stamp, new TrendsPage(SeasonFigures.read(store), new Roster(store).players()));
            made.set(held);
        }
        return held.page();
    }
}
