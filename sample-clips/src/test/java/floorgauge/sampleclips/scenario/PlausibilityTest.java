package floorgauge.sampleclips.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import floorgauge.sampleclips.scene.PersonState;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

/** Speeds of the library's players beside those of real players, both as mean speeds over half a second. */
class PlausibilityTest {

    private static final double WINDOW = 0.5;
    private static final double[] SHARES = {0.25, 0.5, 0.75, 0.95, 0.99};
    private static final double GYM_FRAMES_PER_SECOND = 20;

    private static List<Double> library() {
        List<Double> speeds = new ArrayList<>();
        for (String name : ScenarioLibrary.list()) {
            if (name.endsWith("-sound")) {
                PlayedScene scene = ScenarioLibrary.load(name, 1);
                for (double t = WINDOW; t <= scene.durationSeconds(); t += WINDOW / 2) {
                    List<PersonState> before = scene.at(t - WINDOW).people();
                    List<PersonState> now = scene.at(t).people();
                    for (int i = 0; i < now.size(); i++) {
                        speeds.add(
                                now.get(i).position().distanceTo(before.get(i).position()) / WINDOW);
                    }
                }
            }
        }
        Collections.sort(speeds);
        return speeds;
    }

    private static List<Double> real(Path folder) throws IOException {
        List<Double> speeds = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder.resolve("court-tracks"))) {
            for (Path file : files.sorted().toList()) {
                Map<String, double[]> places = new TreeMap<>();
                for (String line : Files.readAllLines(file)) {
                    String[] parts = line.split(",");
                    places.put(
                            Integer.parseInt(parts[0].trim()) + "," + parts[1].trim(),
                            new double[] {Double.parseDouble(parts[2]) / 100, Double.parseDouble(parts[3]) / 100});
                }
                int frames = (int) Math.round(WINDOW * GYM_FRAMES_PER_SECOND);
                places.forEach((key, now) -> {
                    String[] parts = key.split(",");
                    double[] before = places.get(Integer.parseInt(parts[0]) - frames + "," + parts[1]);
                    if (before != null) {
                        speeds.add(Math.hypot(now[0] - before[0], now[1] - before[1]) / WINDOW);
                    }
                });
            }
        }
        Collections.sort(speeds);
        return speeds;
    }

    private static double quantile(List<Double> sorted, double share) {
        return sorted.get((int) Math.round(share * (sorted.size() - 1)));
    }

    /** Common practice: players on a half court walk and jog most of the time and run at 5 to 7 m/s at most. */
    @Test
    void mostOfTheTimePlayersWalkOrJog() {
        List<Double> speeds = library();
        assertThat(quantile(speeds, 0.5)).isLessThan(2.0);
        assertThat(quantile(speeds, 0.99)).isBetween(3.0, 7.0);
    }

    @Test
    void speedsLieBesideThoseOfRealPlayers() throws IOException {
        String gym = System.getProperty("floorgauge.gym", "");
        assumeTrue(!gym.isBlank(), "give -Dfloorgauge.gym to compare with real tracks");
        List<Double> own = library();
        List<Double> real = real(Path.of(gym));
        StringBuilder table =
                new StringBuilder("| share of time below | library, m/s | real, m/s |\n| --- | --- | --- |\n");
        for (double share : SHARES) {
            table.append(String.format(
                    java.util.Locale.ROOT,
                    "| %.0f %% | %.2f | %.2f |%n",
                    100 * share,
                    quantile(own, share),
                    quantile(real, share)));
        }
        Path folder = Files.createDirectories(Path.of("target", "plausibility"));
        Files.writeString(folder.resolve("speeds.md"), table.toString());
        ImageIO.write(plot(own, real), "png", folder.resolve("speeds.png").toFile());
        assertThat(quantile(own, 0.95))
                .as(table.toString())
                .isBetween(0.5 * quantile(real, 0.95), 2 * quantile(real, 0.95));
    }

    /** Cumulative distributions: speed from 0 to 8 m/s to the right, share of time upwards; own blue, real orange. */
    private static BufferedImage plot(List<Double> own, List<Double> real) {
        BufferedImage image = new BufferedImage(640, 400, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, 640, 400);
        g.setStroke(new BasicStroke(2));
        curve(g, own, new Color(0x1F5FA8));
        curve(g, real, new Color(0xD9730D));
        g.dispose();
        return image;
    }

    private static void curve(Graphics2D g, List<Double> speeds, Color colour) {
        g.setColor(colour);
        int lastX = 0;
        int lastY = 400;
        for (int i = 0; i <= 200; i++) {
            int x = (int) Math.min(640, quantile(speeds, i / 200.0) * 80);
            int y = 400 - 2 * i;
            g.drawLine(lastX, lastY, x, y);
            lastX = x;
            lastY = y;
        }
    }
}
