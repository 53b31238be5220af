package floorgauge.eval.benchmark;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.Joint;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.Pose;
import floorgauge.eval.pose.PoseFrame;
import floorgauge.eval.pose.PoseScores;
import floorgauge.eval.pose.PosedPerson;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;

/** COCO's keypoint scores of a hundred pictures of ten people, joints off by up to a twentieth of the height. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class PoseScoresBenchmark {

    private static final int PICTURES = 100;
    private static final int PEOPLE = 10;
    private static final double HEIGHT = 100;

    private final List<PoseFrame> frames = frames();

    private static List<PoseFrame> frames() {
        SplittableRandom random = new SplittableRandom(9);
        List<PoseFrame> frames = new ArrayList<>();
        for (int k = 0; k < PICTURES; k++) {
            List<PoseFrame.Truth> truths = new ArrayList<>();
            List<PoseFrame.Result> results = new ArrayList<>();
            for (int i = 0; i < PEOPLE; i++) {
                truths.add(new PoseFrame.Truth(person(100 * i, 0, random), false));
                results.add(new PoseFrame.Result(person(100 * i, HEIGHT / 20, random), random.nextDouble()));
            }
            frames.add(new PoseFrame(truths, results));
        }
        return frames;
    }

    private static PosedPerson person(double left, double error, SplittableRandom random) {
        List<Keypoint> joints = new ArrayList<>();
        int count = Joint.values().length;
        for (int j = 0; j < count; j++) {
            double x = left + 30.0 * (j % 2) + error * (2 * random.nextDouble() - 1);
            double y = HEIGHT * j / count + error * (2 * random.nextDouble() - 1);
            joints.add(new Keypoint(new PixelPoint(x, y), 1));
        }
        return PosedPerson.result(new Pose(joints));
    }

    /** Every pair of a picture once: 17 joints, about 8 operations each. */
    @Benchmark
    @Floor(
            work = "AP and AR of 100 pictures of ten poses",
            operations = PICTURES * PEOPLE * PEOPLE * 17 * 8,
            bytes = PICTURES * 2 * PEOPLE * 17 * 24)
    public PoseScores score() {
        return PoseScores.of(frames);
    }
}
