package floorgauge.sampleclips.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import floorgauge.sampleclips.scene.PersonState;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** How the library's players move, beside real players: mean speeds over half a second, their changes, distances. */
class PlausibilityTest {

    private static final double WINDOW = 0.5;
    private static final double[] SHARES = {0.25, 0.5, 0.75, 0.95, 0.99};
    private static final double GYM_FRAMES_PER_SECOND = 20;

    /** Sorted samples: m/s, m/s2, metres to the nearest other player. */
    private record Samples(List<Double> speeds, List<Double> accelerations, List<Double> nearest) {

        Samples() {
            this(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        }

        /** Adds what two windows side by side show: places at the start, the middle and the end, player by player. */
        void add(List<double[]> start, List<double[]> middle, List<double[]> end) {
            for (int i = 0; i < start.size(); i++) {
                double[] first = mean(start.get(i), middle.get(i));
                double[] second = mean(middle.get(i), end.get(i));
                speeds.add(Math.hypot(first[0], first[1]));
                accelerations.add(Math.hypot(second[0] - first[0], second[1] - first[1]) / WINDOW);
                double least = Double.MAX_VALUE;
                for (int j = 0; j < start.size(); j++) {
                    if (i != j) {
                        least = Math.min(
                                least,
                                Math.hypot(middle.get(i)[0] - middle.get(j)[0], middle.get(i)[1] - middle.get(j)[1]));
                    }
                }
                nearest.add(least);
            }
        }

        private static double[] mean(double[] from, double[] to) {
            return new double[] {(to[0] - from[0]) / WINDOW, (to[1] - from[1]) / WINDOW};
        }

        Samples sorted() {
            Collections.sort(speeds);
            Collections.sort(accelerations);
            Collections.sort(nearest);
            return this;
        }
    }

    private static Samples library() {
        Samples samples = new Samples();
        for (String name : ScenarioLibrary.list()) {
            if (name.endsWith("-sound")) {
                PlayedScene scene = ScenarioLibrary.load(name, 1);
                for (double t = 2 * WINDOW; t <= scene.durationSeconds(); t += WINDOW / 2) {
                    samples.add(places(scene, t - 2 * WINDOW), places(scene, t - WINDOW), places(scene, t));
                }
            }
        }
        return samples.sorted();
    }

    private static List<double[]> places(PlayedScene scene, double time) {
        List<double[]> places = new ArrayList<>();
        for (PersonState person : scene.at(time).people()) {
            places.add(
                    new double[] {person.position().xMetres(), person.position().yMetres()});
        }
        return places;
    }

    private static Samples real(Path folder) throws IOException {
        Samples samples = new Samples();
        try (Stream<Path> files = Files.list(folder.resolve("court-tracks"))) {
            for (Path file : files.sorted().toList()) {
                SortedMap<Integer, SortedMap<String, double[]>> frames = new TreeMap<>();
                for (String line : Files.readAllLines(file)) {
                    String[] parts = line.split(",");
                    frames.computeIfAbsent(Integer.parseInt(parts[0].trim()), f -> new TreeMap<>())
                            .put(parts[1].trim(), new double[] {
                                Double.parseDouble(parts[2]) / 100, Double.parseDouble(parts[3]) / 100
                            });
                }
                addFrames(frames, samples);
            }
        }
        return samples.sorted();
    }

    private static void addFrames(SortedMap<Integer, SortedMap<String, double[]>> frames, Samples samples) {
        int window = (int) Math.round(WINDOW * GYM_FRAMES_PER_SECOND);
        frames.forEach((frame, now) -> {
            var before = frames.get(frame - window);
            var first = frames.get(frame - 2 * window);
            boolean whole = before != null
                    && first != null
                    && before.keySet().equals(now.keySet())
                    && first.keySet().equals(now.keySet());
            if (whole) {
                samples.add(List.copyOf(first.values()), List.copyOf(before.values()), List.copyOf(now.values()));
            }
        });
    }

    private static double quantile(List<Double> sorted, double share) {
        return sorted.get((int) Math.round(share * (sorted.size() - 1)));
    }

    /** Common practice: players on a half court walk and jog most of the time and run at 5 to 7 m/s at most. */
    @Test
    void mostOfTheTimePlayersWalkOrJog() {
        List<Double> speeds = library().speeds();
        assertThat(quantile(speeds, 0.5)).isBetween(0.5, 2.0);
        assertThat(quantile(speeds, 0.99)).isBetween(3.0, 7.0);
    }

    /** Writes the table, and the plot to the file of {@code floorgauge.plausibility} where that is given. */
    @Test
    void motionLiesBesideThatOfRealPlayers() throws IOException {
        String gym = System.getProperty("floorgauge.gym", "");
        assumeTrue(!gym.isBlank(), "give -Dfloorgauge.gym to compare with real tracks");
        Samples own = library();
        Samples real = real(Path.of(gym));
        String table = table(own, real);
        Files.writeString(
                Files.createDirectories(Path.of("target", "plausibility")).resolve("motion.md"), table);
        String plot = System.getProperty("floorgauge.plausibility", "target/plausibility/motion.svg");
        Files.writeString(Path.of(plot), plot(own, real));
        assertThat(quantile(own.speeds(), 0.95))
                .as(table)
                .isBetween(0.7 * quantile(real.speeds(), 0.95), 1.4 * quantile(real.speeds(), 0.95));
        assertThat(quantile(own.speeds(), 0.5)).as(table).isGreaterThan(0.5 * quantile(real.speeds(), 0.5));
        assertThat(quantile(own.accelerations(), 0.95))
                .as(table)
                .isBetween(0.6 * quantile(real.accelerations(), 0.95), 1.6 * quantile(real.accelerations(), 0.95));
    }

    private static String table(Samples own, Samples real) {
        StringBuilder table =
                new StringBuilder("| share below | speed, m/s: library | real | acceleration, m/s²: library"
                        + " | real | nearest player, m: library | real |\n"
                        + "| --- | --- | --- | --- | --- | --- | --- |\n");
        for (double share : SHARES) {
            table.append(String.format(
                    Locale.ROOT,
                    "| %.0f %% | %.2f | %.2f | %.2f | %.2f | %.2f | %.2f |%n",
                    100 * share,
                    quantile(own.speeds(), share),
                    quantile(real.speeds(), share),
                    quantile(own.accelerations(), share),
                    quantile(real.accelerations(), share),
                    quantile(own.nearest(), share),
                    quantile(real.nearest(), share)));
        }
        return table.append(String.format(
                        Locale.ROOT,
                        "%d and %d samples%n",
                        own.speeds().size(),
                        real.speeds().size()))
                .toString();
    }

    private static String plot(Samples own, Samples real) {
        CumulativePlot plot = new CumulativePlot();
        plot.panel("speed", "m/s", 6, 1, own.speeds(), real.speeds());
        plot.panel("acceleration", "m/s²", 8, 2, own.accelerations(), real.accelerations());
        plot.panel("nearest other player", "m", 6, 1, own.nearest(), real.nearest());
        return plot.svg();
    }
}
