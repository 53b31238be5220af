package floorgauge.eval.benchmark;

import floorgauge.court.floor.FloorPoint;
import floorgauge.eval.tracking.Sighting;
import floorgauge.eval.tracking.TrackFrame;
import floorgauge.eval.tracking.TrackSequence;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Ten players who run on circles of their own, and a tracker that sees them with 0.2 m of error, loses each for a moment now
 * and then, goes on with a new id each time, and sees a stranger in one frame of fifty.
 */
final class GeneratedFilm {

    private static final double FRAMES_PER_SECOND = 25;
    private static final int PLAYERS = 10;
    private static final double LOST = 0.001;
    private static final double STRANGER = 0.02;

    private final List<TrackFrame<FloorPoint>> truth = new ArrayList<>();
    private final List<TrackFrame<FloorPoint>> result = new ArrayList<>();
    private final SplittableRandom random;
    private final int[] ids = new int[PLAYERS];
    private int nextId = 1;

    GeneratedFilm(double seconds, long seed) {
        random = new SplittableRandom(seed);
        for (int p = 0; p < PLAYERS; p++) {
            ids[p] = nextId++;
        }
        int frames = (int) Math.round(seconds * FRAMES_PER_SECOND);
        for (int f = 0; f < frames; f++) {
            addFrame(f);
        }
    }

    private void addFrame(int f) {
        double time = f / FRAMES_PER_SECOND;
        List<Sighting<FloorPoint>> there = new ArrayList<>(PLAYERS);
        List<Sighting<FloorPoint>> seen = new ArrayList<>(PLAYERS + 1);
        for (int p = 0; p < PLAYERS; p++) {
            double angle = time * (0.3 + 0.05 * p) + p;
            double x = -10 + 1.1 * p + 2 * Math.cos(angle);
            double y = 5 * Math.sin(angle * 0.7);
            there.add(new Sighting<>(p + 1, new FloorPoint(x, y)));
            if (random.nextDouble() < LOST) {
                ids[p] = nextId++;
            } else {
                seen.add(new Sighting<>(ids[p], new FloorPoint(x + error(), y + error())));
            }
        }
        if (random.nextDouble() < STRANGER) {
            seen.add(new Sighting<>(nextId++, new FloorPoint(12 + error(), 6 + error())));
        }
        truth.add(new TrackFrame<>(f, time, there));
        result.add(new TrackFrame<>(f, time, seen));
    }

    private double error() {
        return 0.2 * (random.nextDouble() + random.nextDouble() - 1);
    }

    TrackSequence<FloorPoint> truth() {
        return new TrackSequence<>(truth);
    }

    TrackSequence<FloorPoint> result() {
        return new TrackSequence<>(result);
    }
}
