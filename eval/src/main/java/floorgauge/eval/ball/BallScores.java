package floorgauge.eval.ball;

import floorgauge.court.track.BallObservation;
import floorgauge.eval.assignment.MostPairs;
import floorgauge.eval.statistics.ErrorSummary;
import floorgauge.eval.statistics.Ratios;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/**
 * Ball scores. Each labelled instant with the ball in sight is to be found once; observations that were inferred, without a
 * place in the picture, are neither right nor wrong.
 *
 * @param found labelled instants with an observation within the tolerance
 * @param missed labelled instants without one
 * @param falseAlarms observations without a labelled instant
 * @param pixels distance in the picture of the pairs
 * @param space distance in space of the pairs, metres, where truth and observation both know it
 */
public record BallScores(long found, long missed, long falseAlarms, ErrorSummary pixels, ErrorSummary space) {

    public BallScores {
        Objects.requireNonNull(pixels, "pixels");
        Objects.requireNonNull(space, "space");
    }

    /**
     * @param truth in any order; instants without a place in the picture are not to be found
     * @param results in any order
     */
    public static BallScores of(List<BallTruth> truth, List<BallObservation> results, BallTolerance tolerance) {
        List<BallTruth> wanted = truth.stream()
                .filter(t -> t.position().isPresent())
                .sorted(Comparator.comparingDouble(BallTruth::timeSeconds))
                .toList();
        List<BallObservation> seen = results.stream()
                .filter(r -> r.position().isPresent())
                .sorted(Comparator.comparingDouble(BallObservation::timeSeconds))
                .toList();
        int[] match = MostPairs.match(candidates(wanted, seen, tolerance), wanted.size(), seen.size());
        List<Double> pixels = new ArrayList<>();
        List<Double> space = new ArrayList<>();
        for (int i = 0; i < match.length; i++) {
            if (match[i] >= 0) {
                pixels.add(pixels(wanted.get(i), seen.get(match[i])));
                addSpace(wanted.get(i), seen.get(match[i]), space);
            }
        }
        long found = Arrays.stream(match).filter(m -> m >= 0).count();
        return new BallScores(found, wanted.size() - found, seen.size() - found, summary(pixels), summary(space));
    }

    /** Share of observations that are the ball, 0 to 1; NaN without any. */
    public double precision() {
        return Ratios.of(found, found + falseAlarms);
    }

    /** Share of labelled instants that were found, 0 to 1; NaN without any. */
    public double recall() {
        return Ratios.of(found, found + missed);
    }

    /** Harmonic mean of precision and recall; NaN where there was neither truth nor result. */
    public double f1() {
        return Ratios.f1(found, falseAlarms, missed);
    }

    /** Sliding window over both lists in order of time, so that work grows with the film's length. */
    private static List<MostPairs.Candidate> candidates(
            List<BallTruth> wanted, List<BallObservation> seen, BallTolerance tolerance) {
        List<MostPairs.Candidate> candidates = new ArrayList<>();
        int first = 0;
        for (int i = 0; i < wanted.size(); i++) {
            double time = wanted.get(i).timeSeconds();
            while (first < seen.size() && seen.get(first).timeSeconds() < time - tolerance.seconds()) {
                first++;
            }
            for (int j = first; j < seen.size() && seen.get(j).timeSeconds() <= time + tolerance.seconds(); j++) {
                double distance = pixels(wanted.get(i), seen.get(j));
                if (distance <= tolerance.pixels()) {
                    candidates.add(new MostPairs.Candidate(
                            i, j, closeness(distance, seen.get(j).timeSeconds() - time, tolerance)));
                }
            }
        }
        return candidates;
    }

    private static double closeness(double pixels, double seconds, BallTolerance tolerance) {
        double inTime = tolerance.seconds() == 0 ? 1 : 1 - Math.abs(seconds) / tolerance.seconds();
        return Math.max(0, Math.min(1, (1 - pixels / tolerance.pixels() + inTime) / 2));
    }

    private static double pixels(BallTruth truth, BallObservation seen) {
        return truth.position().orElseThrow().distanceTo(seen.position().orElseThrow());
    }

    private static void addSpace(BallTruth truth, BallObservation seen, List<Double> space) {
        if (truth.space().isPresent() && seen.heightMetres().isPresent()) {
            BallTruth.Place place = truth.space().get();
            double along = seen.floor().mean().distanceTo(place.floor());
            double up = seen.heightMetres().getAsDouble() - place.heightMetres();
            space.add(Math.hypot(along, up));
        }
    }

    private static ErrorSummary summary(List<Double> errors) {
        return ErrorSummary.of(errors.stream().mapToDouble(Double::doubleValue).toArray());
    }
}
