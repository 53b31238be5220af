package floorgauge.eval.score;

import floorgauge.eval.tracking.ClearMatching;
import floorgauge.eval.tracking.EventLog;
import floorgauge.eval.tracking.SimilarityTable;
import floorgauge.eval.tracking.TrackingEvent;
import floorgauge.eval.tracking.TrackingEventKind;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The error rows of one film's tracks. Frames without a break in which the same person is lost are one row. */
final class TrackRows {

    private static final String ABOUT = "track";
    private static final String NOTHING = "-";

    private final FilmResults results;
    private final List<ErrorRow> rows = new ArrayList<>();
    private final Map<Integer, Span> lost = new HashMap<>();
    private final Map<Integer, Span> strangers = new HashMap<>();

    /** A run of frames with the same trouble. */
    private static final class Span {
        private final double fromSeconds;
        private double toSeconds;
        private int frames;
        private long lastPosition;

        private Span(double fromSeconds) {
            this.fromSeconds = fromSeconds;
        }
    }

    private TrackRows(FilmResults results) {
        this.results = results;
    }

    static List<ErrorRow> of(SimilarityTable table, FilmResults results) {
        EventLog log = ClearMatching.usual().match(table);
        TrackRows rows = new TrackRows(results);
        long position = -1;
        long frame = Long.MIN_VALUE;
        for (int i = 0; i < log.size(); i++) {
            TrackingEvent event = log.event(i);
            position += event.frame() == frame ? 0 : 1;
            frame = event.frame();
            rows.add(event, position);
        }
        rows.finish();
        return rows.rows;
    }

    private void add(TrackingEvent event, long position) {
        if (event.kind() == TrackingEventKind.MISS) {
            extend(lost, event.truthId().getAsInt(), event.timeSeconds(), position, true);
        } else if (event.kind() == TrackingEventKind.FALSE_ALARM) {
            extend(strangers, event.resultId().getAsInt(), event.timeSeconds(), position, false);
        } else if (event.kind() == TrackingEventKind.SWITCH) {
            rows.add(new ErrorRow(
                    results.name(),
                    event.timeSeconds(),
                    ABOUT,
                    "switched",
                    "person " + event.truthId().getAsInt() + " / track "
                            + event.resultId().getAsInt(),
                    "the track it had before",
                    "track " + event.resultId().getAsInt(),
                    results.to(event.timeSeconds(), Optional.empty())));
        }
    }

    private void extend(Map<Integer, Span> spans, int id, double time, long position, boolean missed) {
        Span span = spans.get(id);
        if (span != null && position - span.lastPosition > 1) {
            write(id, span, missed);
            span = null;
        }
        if (span == null) {
            span = new Span(time);
            spans.put(id, span);
        }
        span.toSeconds = time;
        span.frames++;
        span.lastPosition = position;
    }

    private void finish() {
        lost.forEach((id, span) -> write(id, span, true));
        strangers.forEach((id, span) -> write(id, span, false));
        rows.sort(ErrorRow.ORDER);
    }

    private void write(int id, Span span, boolean missed) {
        String length = Decimals.of(span.toSeconds - span.fromSeconds, 2) + " s, " + span.frames
                + (span.frames == 1 ? " frame" : " frames");
        rows.add(new ErrorRow(
                results.name(),
                span.fromSeconds,
                ABOUT,
                missed ? "lost" : "nobody there",
                (missed ? "person " : "track ") + id,
                missed ? "a track for " + length : NOTHING,
                missed ? NOTHING : "a track for " + length,
                results.to(span.fromSeconds, Optional.empty())));
    }
}
