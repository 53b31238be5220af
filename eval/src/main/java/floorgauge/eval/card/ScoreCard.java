package floorgauge.eval.card;

import floorgauge.eval.events.EvenGuesses;
import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventTolerance;
import floorgauge.eval.film.HeldOutFilm;
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
import java.util.ArrayList;
import java.util.List;

/** Writes the score card; {@link CardOptions} are its arguments. */
public final class ScoreCard {

    /** Seeds that no development used; those below 100 are for it. */
    private static final long[] HELD_OUT = {9001, 9002};

    private final CardOptions options;

    private ScoreCard(CardOptions options) {
        this.options = options;
    }

    /** @param arguments FILE DATE WORK [--only PART,...] [--films N] [--gym FOLDER] */
    public static void main(String[] arguments) throws IOException {
        CardOptions options;
        try {
            options = CardOptions.of(arguments);
        } catch (IllegalArgumentException e) {
            System.err.println(e.getMessage());
            System.exit(2);
            return;
        }
        new ScoreCard(options).make();
    }

    /** Each part is written when it is made, so that what ends the run later loses no other part. */
    private void make() throws IOException {
        for (CardPart part : options.parts()) {
            long start = System.nanoTime();
            CardText text = new CardText();
            switch (part) {
                case FILMS, GYM -> filmed(part, text);
                case SCENES -> scenes(text);
            }
            Card.read(options.file())
                    .with(part, options.date(), options.commandOf(part), text.toString())
                    .write(options.file());
            System.out.println(
                    "score card: " + part.word() + " took " + (System.nanoTime() - start) / 1_000_000_000 + " s");
        }
    }

    /** The networks are loaded only where a film asks for them. */
    private void filmed(CardPart part, CardText text) throws IOException {
        try (FilmTracker tracker = new FilmTracker(TrackingSettings.defaults())) {
            if (part == CardPart.FILMS) {
                List<HeldOutFilm> films =
                        HeldOutFilms.ALL.subList(0, Math.min(options.films(), HeldOutFilms.ALL.size()));
                FilmSection.write(films, options.work(), tracker, text);
            } else {
                GymSection.write(options.gym().orElseThrow(), tracker, text);
            }
        }
    }

    private static void scenes(CardText text) {
        List<String> unplayed = new ArrayList<>();
        List<PlayedScene> scenes = SceneEvents.played(ScenarioLibrary.list(), HELD_OUT, unplayed);
        events(text, "with exact tracks", scenes, TrackNoise.NONE);
        events(text, "with a good tracker's errors", scenes, TrackNoise.GOOD);
        events(text, "with a middling tracker's errors", scenes, TrackNoise.POOR);
        if (!unplayed.isEmpty()) {
            text.append("Scenes that could not be played and are left out: " + String.join(", ", unplayed) + ".\n");
        }
    }

    private static void events(CardText text, String how, List<PlayedScene> scenes, TrackNoise noise) {
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
