package floorgauge.eval.film;

import floorgauge.court.track.ImageBox;
import floorgauge.vision.network.Detection;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How many labelled players a detector finds, by their height in the picture, apart for those in the clear and those behind others.
 * Both are told from the labelled boxes alone, so that film of any source is counted alike.
 */
final class PlayerRecall {

    static final double MIN_SCORE = 0.25;

    private static final double OVERLAP = 0.5;

    /** A player of whose box nearer players' boxes cover more is behind others. */
    private static final double MOST_COVERED = 0.1;

    private static final int[] HEIGHTS = {0, 40, 50, 60, 75, 95, 120, 160};

    /** A labelled player and what became of him. */
    record Player(ImageBox box, boolean behind, boolean found) {}

    private record Count(int found, int all) {

        Count plus(boolean one) {
            return new Count(found + (one ? 1 : 0), all + 1);
        }

        double share() {
            return (double) found / all;
        }

        /** With the standard error of the share. */
        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT, "%.2f ± %.2f of %d", share(), Math.sqrt(share() * (1 - share()) / all), all);
        }
    }

    private static final Count NONE = new Count(0, 0);

    private final TreeMap<Integer, Count> clear = new TreeMap<>();
    private final TreeMap<Integer, Count> behind = new TreeMap<>();

    /** Counts a picture; in the order of the players. */
    List<Player> add(List<ImageBox> players, List<Detection> detections) {
        List<Detection> left = new ArrayList<>(detections);
        List<Player> judged = new ArrayList<>();
        for (ImageBox box : players) {
            Optional<Detection> match = left.stream()
                    .filter(d -> d.score() >= MIN_SCORE && d.box().intersectionOverUnion(box) >= OVERLAP)
                    .findFirst();
            match.ifPresent(left::remove);
            boolean hides = covered(box, players) > MOST_COVERED;
            (hides ? behind : clear).merge(least(box), NONE.plus(match.isPresent()), PlayerRecall::sum);
            judged.add(new Player(box, hides, match.isPresent()));
        }
        return judged;
    }

    private static Count sum(Count a, Count b) {
        return new Count(a.found() + b.found(), a.all() + b.all());
    }

    private static int least(ImageBox box) {
        int least = HEIGHTS[0];
        for (int height : HEIGHTS) {
            least = box.height() >= height ? height : least;
        }
        return least;
    }

    /** The largest share of a box that a single nearer player's box covers; who stands nearer has his feet lower in the picture. */
    private static double covered(ImageBox box, List<ImageBox> players) {
        return players.stream()
                .filter(other -> other != box && other.bottom() > box.bottom())
                .mapToDouble(other -> other.intersectionArea(box) / box.area())
                .max()
                .orElse(0);
    }

    /** Share found of all players. */
    double all() {
        Count all = NONE;
        for (Count count : clear.values()) {
            all = sum(all, count);
        }
        for (Count count : behind.values()) {
            all = sum(all, count);
        }
        return all.share();
    }

    void print(String what) {
        clear.forEach((least, count) ->
                System.out.printf(Locale.ROOT, "%s, in the clear, from %d px: recall %s%n", what, least, count));
        behind.forEach((least, count) ->
                System.out.printf(Locale.ROOT, "%s, behind others, from %d px: recall %s%n", what, least, count));
        System.out.printf(Locale.ROOT, "%s, all: recall %.2f%n", what, all());
    }
}
