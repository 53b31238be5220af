package floorgauge.eval.card;

import floorgauge.court.failure.MendableException;
import floorgauge.eval.ball.BallScores;
import floorgauge.eval.court.CourtScores;
import floorgauge.eval.court.FloorErrors;
import floorgauge.eval.events.EvenGuesses;
import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.film.FilmMeasurement;
import floorgauge.eval.film.FilmScores;
import floorgauge.eval.film.HeldOutFilm;
import floorgauge.eval.film.RenderedTruth;
import floorgauge.eval.score.EventTable;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.vision.tracking.FilmTracker;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The card's part on rendered film: every stage on pictures that nothing was tuned on. A film that breaks is a row that says so. */
final class FilmSection {

    private final List<FilmScores> scores = new ArrayList<>();
    private final List<String> broken = new ArrayList<>();
    private final CardText text;

    private FilmSection(CardText text) {
        this.text = text;
    }

    static void write(List<HeldOutFilm> films, Path work, FilmTracker tracker, CardText text) throws IOException {
        FilmSection section = new FilmSection(text);
        for (HeldOutFilm film : films) {
            section.measure(film, work, tracker);
        }
        section.write();
    }

    /** What was scored, and the films that broke, each with the reason. */
    static void write(List<FilmScores> scores, List<String> broken, CardText text) {
        FilmSection section = new FilmSection(text);
        section.scores.addAll(scores);
        section.broken.addAll(broken);
        section.write();
    }

    private void write() {
        court();
        tracks();
        poses();
        ball();
        findings();
    }

    private void measure(HeldOutFilm film, Path work, FilmTracker tracker) throws IOException {
        System.out.println("score card: " + film.name());
        Path file = film.render(work);
        try {
            FilmMeasurement measured = FilmMeasurement.of(file, film.scene().rules(), tracker);
            scores.add(new FilmScores(film, RenderedTruth.beside(file), measured));
        } catch (MendableException | IllegalArgumentException | IllegalStateException e) {
            broken.add(film.name() + " ("
                    + e.getMessage().replace(work.toString(), "").strip() + ")");
        }
    }

    private boolean begin(String title) {
        text.heading(title);
        if (!broken.isEmpty()) {
            text.append("Not measured, because the measurement breaks: " + String.join("; ", broken) + ".\n\n");
        }
        return !scores.isEmpty();
    }

    private void court() {
        if (begin("Court on rendered film")) {
            text.table(
                    "film",
                    "status",
                    "median error, m",
                    "90th percentile, m",
                    "coverage",
                    "IoU of visible court",
                    "in stated 90 %");
            for (FilmScores film : scores) {
                CourtScores court = film.court();
                text.row(
                        film.film().name(),
                        film.courtStatus().name().toLowerCase(java.util.Locale.ROOT),
                        CardText.figure(court.supported().medianMetres(), 3),
                        CardText.figure(court.supported().ninetiethMetres(), 3),
                        CardText.figure(court.coverage(), 2),
                        CardText.figure(court.visibleIou(), 3),
                        CardText.figure(court.supported().withinStatedShare(), 2));
            }
            text.note(
                    "From the painted lines, rule book given; errors on a grid of 0.5 m where the calibration says that"
                            + " its evidence carries. Coverage is the share of the floor in the picture of which it says so.");
        }
    }

    private void tracks() {
        if (begin("Tracks on rendered film")) {
            text.table(
                    "film",
                    "HOTA",
                    "DetA",
                    "AssA",
                    "LocA",
                    "MOTA",
                    "IDF1",
                    "switches",
                    "feet, median error, m",
                    "feet, 90th percentile, m");
            for (FilmScores film : scores) {
                FloorErrors feet = film.feet();
                List<String> cells =
                        new ArrayList<>(film.tracks().map(CardText::tracking).orElse(CardText.dashes(7)));
                cells.add(CardText.figure(feet.medianMetres(), 2));
                cells.add(CardText.figure(feet.ninetiethMetres(), 2));
                text.row(film.film().name(), cells);
            }
            text.note(
                    "Similarity is the intersection over union of boxes; hidden players are wanted too. Feet are compared"
                            + " with the pelvis straight down on the floor.");
        }
    }

    private void poses() {
        if (begin("Poses on rendered film")) {
            text.table(
                    "film",
                    "AP",
                    "AR",
                    "joints within a tenth of the box",
                    "ankles on the floor, median error, m",
                    "ankles, 90th percentile, m");
            for (FilmScores film : scores) {
                text.row(
                        film.film().name(),
                        CardText.figure(film.poses().averagePrecision(), 3),
                        CardText.figure(film.poses().averageRecall(), 3),
                        CardText.figure(film.correctKeypoints(), 3),
                        CardText.figure(film.ankles().medianMetres(), 2),
                        CardText.figure(film.ankles().ninetiethMetres(), 2));
            }
            text.note(
                    "COCO's keypoint task over the frames in which the pose network ran, players alone wanted; the network"
                            + " learned on photographs, the bodies are drawn. Ankles are those of feet that stand.");
        }
    }

    private void ball() {
        if (begin("Ball on rendered film")) {
            if (scores.stream().allMatch(s -> s.ball().isEmpty())) {
                text.append("The stage is not built yet: no run looks for the ball.\n\n");
                return;
            }
            text.table(
                    "film", "precision", "recall", "F1", "error in the picture, median px", "error in space, median m");
            for (FilmScores film : scores) {
                text.row(film.film().name(), film.ball().map(FilmSection::ball).orElse(CardText.dashes(5)));
            }
            text.note("Within 10 pixels and 0.04 s, where at least a third of the ball is seen.");
        }
    }

    private static List<String> ball(BallScores ball) {
        return List.of(
                CardText.figure(ball.precision(), 3),
                CardText.figure(ball.recall(), 3),
                CardText.figure(ball.f1(), 3),
                CardText.figure(ball.pixels().medianAbsolute(), 1),
                CardText.figure(ball.space().medianAbsolute(), 2));
    }

    private void findings() {
        if (begin("Events and flags on rendered film")) {
            List<EventFilm> films = scores.stream().map(FilmScores::events).toList();
            text.eventTable();
            EventTable.of(films, EvenGuesses.of(films), EventTolerance.USUAL, ClipBootstrap.usual())
                    .forEach(line -> text.append(line + "\n"));
            text.note("From pictures to findings, " + films.size() + (films.size() == 1 ? " film." : " films.")
                    + " With few films the intervals are wide.");
        }
    }
}
