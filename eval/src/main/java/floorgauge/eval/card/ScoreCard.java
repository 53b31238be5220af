package floorgauge.eval.card;

import floorgauge.eval.events.EvenGuesses;
import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.scene.SceneEvents;
import floorgauge.eval.score.Decimals;
import floorgauge.eval.score.EventTable;
import floorgauge.eval.statistics.ClipBootstrap;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.vision.tracking.FilmTracker;
import floorgauge.vision.tracking.TrackingSettings;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Writes the score card; {@link CardOptions} are its arguments. */
public final class ScoreCard {

    /** Seeds that no development used; those below 100 are for it. */
    private static final long[] HELD_OUT = {9001, 9002};

    private final CardOptions options;
    private final CardText text = new CardText();

    private ScoreCard(CardOptions options) {
        this.options = options;
    }

    /** @param arguments FILE DATE WORK [--films N] [--gym FOLDER] */
    public static void main(String[] arguments) throws IOException {
        CardOptions options;
        try {
            options = CardOptions.of(arguments);
        } catch (IllegalArgumentException e) {
            System.err.println(e.getMessage());
            System.exit(2);
            return;
        }
        Path part = options.file().resolveSibling(options.file().getFileName() + ".part");
        Files.writeString(part, new ScoreCard(options).write());
        Files.move(part, options.file(), StandardCopyOption.REPLACE_EXISTING);
    }

    private String write() throws IOException {
        text.append(
                "# Score card\n\n    " + options.command() + "\n\nMade on " + options.date()
                        + " by the command above; not edited by hand. Intervals hold 90 %, from resampling scenes or films.\n\n");
        films();
        scenes();
        return text.toString();
    }

    /** The networks are loaded only where a film asks for them. */
    private void films() throws IOException {
        Optional<FilmTracker> tracker =
                options.films() == 0 ? Optional.empty() : Optional.of(new FilmTracker(TrackingSettings.defaults()));
        try {
            FilmSection.write(
                    HeldOutFilms.ALL.subList(0, Math.min(options.films(), HeldOutFilms.ALL.size())),
                    options.work(),
                    tracker,
                    text);
            GymSection.write(options.gym(), tracker, text);
        } finally {
            tracker.ifPresent(FilmTracker::close);
        }
    }

    private void scenes() {
        List<String> unplayed = new ArrayList<>();
        List<PlayedScene> scenes = SceneEvents.played(ScenarioLibrary.list(), HELD_OUT, unplayed);
        events("with exact tracks", scenes, TrackNoise.NONE);
        events("with a good tracker's errors", scenes, TrackNoise.GOOD);
        events("with a middling tracker's errors", scenes, TrackNoise.POOR);
        if (!unplayed.isEmpty()) {
            text.append("Scenes that could not be played and are left out: " + String.join(", ", unplayed) + ".\n");
        }
    }

    private void events(String how, List<PlayedScene> scenes, TrackNoise noise) {
        System.out.println("score card: events " + how);
        List<String> broken = new ArrayList<>();
        List<EventFilm> films = SceneEvents.measured(scenes, noise, Standards.defaults(), broken);
        text.heading("Events " + how);
        text.append(films.size() + " scenes of the library, held-out seeds, tracks sampled from the exact motion"
                + (noise == TrackNoise.NONE ? "" : " with " + Decimals.plain(noise.positionMetres()) + " m of error")
                + ".\n\n");
        text.eventTable();
        EventTable.of(films, EvenGuesses.of(films), EventTolerance.USUAL, ClipBootstrap.usual())
                .forEach(line -> text.append(line + "\n"));
        if (!broken.isEmpty()) {
            text.append("\nThe measurement breaks on " + String.join(", ", broken)
                    + "; these count as if nothing had been found.\n");
        }
        text.append("\n");
    }
}
