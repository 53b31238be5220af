package floorgauge.eval.card;

import floorgauge.court.calibration.CalibrationStatus;
import floorgauge.court.calibration.CourtCalibration;
import floorgauge.court.failure.MendableException;
import floorgauge.eval.court.CourtScores;
import floorgauge.eval.film.FilmMeasurement;
import floorgauge.eval.film.GymFilm;
import floorgauge.vision.tracking.FilmTracker;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** The card's part on real film. */
final class GymSection {

    private final CardText text;

    private GymSection(CardText text) {
        this.text = text;
    }

    static void write(Path folder, FilmTracker tracker, CardText text) throws IOException {
        GymSection section = new GymSection(text);
        section.film(new GymFilm(folder), tracker);
        text.append(
                "Poses: the data set's are of other clips, whose pictures are not at hand. Ball, events and flags: nobody"
                        + " has labelled them on real film yet.\n\n");
    }

    private void film(GymFilm gym, FilmTracker tracker) throws IOException {
        System.out.println("score card: the gym film");
        text.table("tracks", "HOTA", "DetA", "AssA", "LocA", "MOTA", "IDF1", "switches");
        text.row("a published tracker, 21 gym clips", CardText.tracking(gym.published()));
        Optional<String> trouble = tracks(gym, tracker);
        text.note(
                "Similarity is the intersection over union of boxes. The project's film is one of the 21, drawn over and at"
                        + " half the size; the court is the data set's own."
                        + trouble.map(t -> " It was not measured: " + t + ".").orElse(""));
        court(gym);
    }

    private Optional<String> tracks(GymFilm gym, FilmTracker tracker) {
        try {
            FilmMeasurement measured = FilmMeasurement.of(gym.film(), gym.court(), tracker);
            measured.tracked()
                    .ifPresent(t -> text.row("this project, one gym clip", CardText.tracking(gym.scores(t.tracks()))));
            return Optional.empty();
        } catch (MendableException | IOException | IllegalArgumentException | IllegalStateException e) {
            return Optional.of(e.getMessage().replace(gym.folder().toString(), ""));
        }
    }

    private void court(GymFilm gym) throws IOException {
        CourtCalibration known = gym.court();
        CourtCalibration found = FilmMeasurement.court(gym.film(), known.rules());
        if (found.status() == CalibrationStatus.NONE) {
            text.append(
                    "Court from the lines of this film, which is drawn over: none found. " + found.reason() + "\n\n");
            return;
        }
        CourtScores scores = CourtScores.of(known, found, 0.5);
        text.append("Court from the lines of this film, which is drawn over, against the data set's own: median error "
                + CardText.figure(scores.supported().medianMetres(), 2) + " m, coverage "
                + CardText.figure(scores.coverage(), 2) + ".\n\n");
    }
}
