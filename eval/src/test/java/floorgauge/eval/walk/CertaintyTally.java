package floorgauge.eval.walk;

import floorgauge.eval.events.EventMatches;
import floorgauge.eval.statistics.PrecisionRecallCurve.Candidate;
import floorgauge.eval.statistics.Reliability;
import floorgauge.events.finding.FindingKind;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Stated probability against the share that is real, kind by kind. */
final class CertaintyTally {

    private final Map<FindingKind, List<Candidate>> candidates = new EnumMap<>(FindingKind.class);
    private final List<Candidate> flags = new ArrayList<>();

    void take(FindingKind kind, EventMatches matches) {
        List<Candidate> mine = candidates.computeIfAbsent(kind, k -> new ArrayList<>());
        matches.pairs().forEach(p -> mine.add(new Candidate(p.result().probability(), true)));
        matches.falseAlarms().forEach(r -> mine.add(new Candidate(r.probability(), false)));
        if (kind.isFlag()) {
            matches.pairs().forEach(p -> flags.add(new Candidate(p.result().probability(), true)));
            matches.falseAlarms().forEach(r -> flags.add(new Candidate(r.probability(), false)));
        }
    }

    void print() {
        print("screens", candidates.getOrDefault(FindingKind.SCREEN, List.of()));
        candidates.forEach((kind, list) -> {
            if (kind.isFlag() && !list.isEmpty()) {
                System.out.printf(
                        Locale.ROOT,
                        "%-18s %4d flags, calibration error %.3f%n",
                        kind.words(),
                        list.size(),
                        Reliability.of(list, Reliability.USUAL_BINS).calibrationError());
            }
        });
        print("flags", flags);
    }

    private static void print(String what, List<Candidate> list) {
        Reliability reliability = Reliability.of(list, Reliability.USUAL_BINS);
        System.out.printf(
                Locale.ROOT, "%s: calibration error %.3f, stated -> real:", what, reliability.calibrationError());
        for (Reliability.Bin bin : reliability.bins()) {
            if (bin.count() > 0) {
                System.out.printf(Locale.ROOT, " %.2f->%.2f (%d)", bin.meanProbability(), bin.realShare(), bin.count());
            }
        }
        System.out.println();
    }
}
