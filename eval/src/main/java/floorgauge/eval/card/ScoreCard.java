package floorgauge.eval.card;

import floorgauge.court.track.ImageBox;
import floorgauge.eval.events.EvenGuesses;
import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.scene.SceneEvents;
import floorgauge.eval.score.Decimals;
import floorgauge.eval.score.EventTable;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.eval.tracking.BoxSimilarity;
import floorgauge.eval.tracking.FloorSimilarity;
import floorgauge.eval.tracking.MotChallengeFile;
import floorgauge.eval.tracking.TrackSequence;
import floorgauge.eval.tracking.TrackingScores;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Writes the score card. Arguments: the file to write, the date, the sample clips' folder, the folder that {@code floorgauge
 * measure} wrote for them, and, where it is at hand, the folder of the real gym clips with results beside.
 */
public final class ScoreCard {

    /** Seeds that no development used; those below 100 are for it. */
    private static final long[] HELD_OUT = {9001, 9002};

    private static final double SAMPLE_RATE = 30;
    private static final double GYM_RATE = 20;

    private final StringBuilder text = new StringBuilder();

    private ScoreCard() {}

    /** @param arguments FILE DATE CLIPS RESULTS [GYM] */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length < 4) {
            System.err.println("score card: expected FILE DATE CLIPS RESULTS [GYM]");
            System.exit(2);
        }
        String card = new ScoreCard()
                .write(
                        arguments[1],
                        Path.of(arguments[2]),
                        Path.of(arguments[3]),
                        arguments.length > 4 ? Optional.of(Path.of(arguments[4])) : Optional.empty());
        Files.writeString(Path.of(arguments[0]), card);
    }

    private String write(String date, Path clips, Path results, Optional<Path> gym) throws IOException {
        text.append("# Score card\n\n    eval/score-card\n\nMade on ")
                .append(date)
                .append(" by the command above; not edited by hand. Intervals hold 90 %, from resampling scenes.\n\n");
        List<String> unplayed = new ArrayList<>();
        List<PlayedScene> scenes = SceneEvents.played(ScenarioLibrary.list(), HELD_OUT, unplayed);
        events("with exact tracks", scenes, TrackNoise.NONE);
        events("with a good tracker's errors", scenes, TrackNoise.GOOD);
        events("with a middling tracker's errors", scenes, TrackNoise.POOR);
        if (!unplayed.isEmpty()) {
            text.append("Scenes that could not be played and are left out: ")
                    .append(String.join(", ", unplayed))
                    .append(".\n\n");
        }
        tracks(clips, results);
        gym(gym);
        text.append("## Court, poses, ball, flags on film\n\n")
                .append(
                        "- Court: not on this card yet; the scores are built (`floorgauge.eval.court`), no run feeds them.\n")
                .append(
                        "- Poses: not on this card yet; the scores are built (`floorgauge.eval.pose`), no run feeds them.\n")
                .append("- Ball: the stage is not built yet; the scores are (`floorgauge.eval.ball`).\n")
                .append("- Findings on real film: there are no labels of real film yet.\n");
        return text.toString();
    }

    private void events(String how, List<PlayedScene> scenes, TrackNoise noise) {
        List<String> broken = new ArrayList<>();
        List<EventFilm> films = SceneEvents.measured(scenes, noise, Standards.defaults(), broken);
        text.append("## Events ")
                .append(how)
                .append("\n\n")
                .append(films.size())
                .append(" scenes of the library, held-out seeds, tracks sampled from the exact motion")
                .append(
                        noise == TrackNoise.NONE
                                ? ""
                                : " with " + Decimals.plain(noise.positionMetres()) + " m of error")
                .append(".\n\n| kind | precision | recall | F1 | 90 % interval | blind guesser's F1 |\n")
                .append("| --- | --: | --: | --: | --: | --: |\n");
        EventTable.of(films, EvenGuesses.of(films), EventTolerance.USUAL, ClipBootstrap.usual())
                .forEach(line -> text.append(line).append('\n'));
        if (!broken.isEmpty()) {
            text.append("\nThe measurement breaks on ")
                    .append(String.join(", ", broken))
                    .append("; these count as if nothing had been found.\n");
        }
        text.append('\n');
    }

    private void tracks(Path clips, Path results) throws IOException {
        text.append("## Tracks on rendered film\n\n");
        StringBuilder rows = new StringBuilder();
        try (Stream<Path> files = Files.list(clips)) {
            for (Path truth : files.filter(f -> f.toString().endsWith(".mot.txt"))
                    .sorted()
                    .toList()) {
                String name = truth.getFileName().toString().replace(".mot.txt", "");
                Path found = results.resolve(name).resolve("tracks.mot.txt");
                if (Files.isRegularFile(found)) {
                    rows.append(row(name, floor(truth, found)));
                }
            }
        }
        table(rows, "Similarity is the distance on the floor, 0 at 2 m.");
    }

    private static TrackingScores floor(Path truth, Path found) {
        MotChallengeFile expected = MotChallengeFile.read(truth);
        MotChallengeFile came = MotChallengeFile.read(found);
        return TrackingScores.of(
                expected.floor(SAMPLE_RATE, came.lastFrame()), came.floor(SAMPLE_RATE, -1), FloorSimilarity.DEFAULT);
    }

    /** The published tracker's scores stand as an anchor beside whatever results are given. */
    private void gym(Optional<Path> folder) throws IOException {
        text.append("## Tracks on real film\n\n");
        if (folder.isEmpty()) {
            text.append("Not measured in this run: the folder of the gym clips was not given.\n\n");
            return;
        }
        TrackingScores anchor = TrackingScores.none();
        try (Stream<Path> files = Files.list(folder.get().resolve("boxes"))) {
            for (Path truth : files.sorted().toList()) {
                Path other = folder.get().resolve("other-tracker").resolve(truth.getFileName());
                anchor = anchor.plus(boxes(truth, other, MotChallengeFile.FirstFrame.ZERO));
            }
        }
        StringBuilder rows = new StringBuilder(row("a published tracker, 21 gym clips, boxes", anchor));
        Path own = folder.get().resolve("results/s1t1-drawn-over/tracks.mot.txt");
        if (Files.isRegularFile(own)) {
            Path truth = folder.get().resolve("boxes/s1t1.txt");
            rows.append(row("this project, one gym clip, boxes", boxes(truth, own, MotChallengeFile.FirstFrame.ONE)));
        }
        table(rows, "Similarity is the intersection over union of boxes.");
    }

    private static TrackingScores boxes(Path truth, Path found, MotChallengeFile.FirstFrame firstFrame) {
        MotChallengeFile expected = MotChallengeFile.read(truth);
        MotChallengeFile came = MotChallengeFile.read(found, firstFrame);
        TrackSequence<ImageBox> labelled = expected.boxes(GYM_RATE, came.lastFrame());
        return TrackingScores.of(labelled, came.boxes(GYM_RATE, expected.lastFrame()), new BoxSimilarity());
    }

    private void table(StringBuilder rows, String note) {
        if (rows.length() == 0) {
            text.append("Not measured in this run: no results were given.\n\n");
            return;
        }
        text.append("| clip | HOTA | DetA | AssA | LocA | MOTA | IDF1 | switches |\n")
                .append("| --- | --: | --: | --: | --: | --: | --: | --: |\n")
                .append(rows)
                .append('\n')
                .append(note)
                .append("\n\n");
    }

    private static String row(String name, TrackingScores scores) {
        return "| " + name + " | "
                + String.join(
                        " | ",
                        Decimals.of(scores.hota().hota(), 3),
                        Decimals.of(scores.hota().detectionAccuracy(), 3),
                        Decimals.of(scores.hota().associationAccuracy(), 3),
                        Decimals.of(scores.hota().localisationAccuracy(), 3),
                        Decimals.of(scores.clear().mota(), 3),
                        Decimals.of(scores.identity().idf1(), 3),
                        String.valueOf(scores.clear().switches()))
                + " |\n";
    }
}
