package floorgauge.eval.events;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import floorgauge.court.floor.FloorCovariance;
import floorgauge.court.floor.FloorEstimate;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.rules.RuleSet;
import floorgauge.court.track.Body;
import floorgauge.court.track.FilmTracks;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerTrack;
import floorgauge.court.track.Team;
import floorgauge.events.Measurement;
import floorgauge.events.finding.FindingKind;
import floorgauge.events.finding.Findings;
import floorgauge.events.finding.PossessionFindings;
import floorgauge.events.finding.Trail;
import floorgauge.events.finding.TrailPoint;
import floorgauge.events.standards.Standards;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Real tracks of three against three, labelled by hand, without a ball: gym-3x3 (Yamada and others, TrackID3x3, 2025, arXiv
 * 2503.18282). Given by the system property {@code floorgauge.gym}; skipped without. The columns by role say who attacks.
 */
class GymMeasurementTest {

    private static final double FRAMES_PER_SECOND = 20;

    /** A box's lower edge on the floor, by eye. */
    private static final double ERROR_METRES = 0.15;

    @Test
    void threeAgainstThreeIsMeasuredPlausibly() throws IOException {
        String folder = System.getProperty("floorgauge.gym", "");
        assumeTrue(!folder.isEmpty(), "floorgauge.gym is not given: real tracks are not measured");
        List<Path> clips;
        try (Stream<Path> files = Files.list(Path.of(folder, "court-tracks-by-role"))) {
            clips = files.filter(f -> f.toString().endsWith(".csv")).sorted().toList();
        }
        assertThat(clips).isNotEmpty();
        double right = 0;
        double ticks = 0;
        int screens = 0;
        List<Double> speeds = new ArrayList<>();
        ScreenSheet sheet = new ScreenSheet();
        for (Path clip : clips) {
            Findings findings = Measurement.measure(tracks(clip), RuleSet.fiba(), Standards.defaults());
            for (PossessionFindings possession : findings.possessions()) {
                double length = possession.spacing().size();
                ticks += length;
                right += possession.possession().attack() == Team.FIRST ? length : 0;
                assertThat(possession.possession().ballSeen()).isFalse();
                speeds(possession.trails(), speeds);
                possession.findings().stream()
                        .filter(f -> f.kind() == FindingKind.SCREEN)
                        .forEach(f ->
                                sheet.add(clip.getFileName().toString().replace(".csv", ""), f, possession.trails()));
            }
            screens += findings.ofKind(FindingKind.SCREEN).size();
            assertThat(findings.ofKind(FindingKind.PASS)).isEmpty();
        }
        assertThat(sheet.size()).isEqualTo(screens);
        sheet.write(Path.of("target", "gym-screens.png"));
        speeds.sort(Double::compare);
        double median = speeds.get(speeds.size() / 2);
        double high = speeds.get((int) (speeds.size() * 0.99));
        System.out.printf(
                Locale.ROOT,
                "%d clips: attack told right in %.3f of the time, %d screens, speed median %.2f, 99 in 100 below %.2f m/s%n",
                clips.size(),
                right / ticks,
                screens,
                median,
                high);
        assertThat(right / ticks).isGreaterThan(0.9);
        assertThat(median).isBetween(0.3, 2.5);
        assertThat(high).isLessThan(9);
    }

    private static void speeds(List<Trail> trails, List<Double> into) {
        trails.forEach(
                t -> t.points().stream().map(TrailPoint::speedMetresPerSecond).forEach(into::add));
    }

    /** Columns: frame from 1, then x and y in cm from the corner for O1 to O3 and D1 to D3. */
    private static FilmTracks tracks(Path file) throws IOException {
        TreeMap<Long, Double> times = new TreeMap<>();
        List<List<PlayerObservation>> players = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            players.add(new ArrayList<>());
        }
        RuleSet rules = RuleSet.fiba();
        for (String line : Files.readAllLines(file).stream().skip(1).toList()) {
            String[] cells = line.split(",", -1);
            long frame = Math.round(Double.parseDouble(cells[0])) - 1;
            double time = frame / FRAMES_PER_SECOND;
            times.put(frame, time);
            for (int i = 0; i < 6; i++) {
                if (cells[1 + 2 * i].isBlank() || cells[2 + 2 * i].isBlank()) {
                    continue;
                }
                double x = Double.parseDouble(cells[1 + 2 * i]) / 100 - rules.lengthMetres() / 2;
                double y = Double.parseDouble(cells[2 + 2 * i]) / 100 - rules.widthMetres() / 2;
                players.get(i)
                        .add(new PlayerObservation(
                                frame,
                                time,
                                new FloorEstimate(new FloorPoint(x, y), FloorCovariance.isotropic(ERROR_METRES)),
                                FootSource.BOX_BOTTOM,
                                Optional.empty(),
                                Optional.empty(),
                                Body.UNSEEN,
                                1));
            }
        }
        List<PlayerTrack> tracks = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            if (!players.get(i).isEmpty()) {
                tracks.add(new PlayerTrack(i + 1, i < 3 ? Team.FIRST : Team.SECOND, 1, players.get(i), List.of()));
            }
        }
        return new FilmTracks(times, tracks, Optional.empty());
    }
}
