package floorgauge.eval.scene;

import floorgauge.court.track.FilmTracks;
import floorgauge.eval.events.EventFilm;
import floorgauge.eval.events.EventMark;
import floorgauge.eval.events.Identities;
import floorgauge.events.Measurement;
import floorgauge.events.standards.Standards;
import floorgauge.sampleclips.labels.FilmLabels;
import floorgauge.sampleclips.labels.scene.SceneLabeller;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioException;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import floorgauge.sampleclips.tracks.TrackNoise;
import floorgauge.sampleclips.tracks.TrueTracks;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Scenes of the library, measured from tracks with a tracker's errors, and labelled by their truth. */
public final class SceneEvents {

    private static final double FRAMES_PER_SECOND = 25;
    private static final double SECONDS_PER_HOUR = 3600;

    private SceneEvents() {}

    /**
     * Plays scenarios.
     *
     * @param names of the library
     * @param seeds each scenario is played with each
     * @param unplayed takes the names of scenes that a seed makes impossible
     */
    public static List<PlayedScene> played(List<String> names, long[] seeds, List<String> unplayed) {
        List<PlayedScene> scenes = new ArrayList<>();
        for (String name : names) {
            for (long seed : seeds) {
                try {
                    scenes.add(ScenarioLibrary.load(name, seed));
                } catch (ScenarioException e) {
                    unplayed.add(name + " with seed " + seed);
                }
            }
        }
        return scenes;
    }

    /**
     * Every scene measured from tracks with this noise, in order.
     *
     * @param standards what the findings are held against
     * @param broken takes the names of scenes on which the measurement breaks; they count as if nothing had been found
     */
    public static List<EventFilm> measured(
            List<PlayedScene> scenes, TrackNoise noise, Standards standards, List<String> broken) {
        List<EventFilm> films = new ArrayList<>();
        for (int i = 0; i < scenes.size(); i++) {
            films.add(measured(scenes.get(i), i + 1L, noise, standards, broken));
        }
        return films;
    }

    private static EventFilm measured(
            PlayedScene scene, long seed, TrackNoise noise, Standards standards, List<String> broken) {
        FilmLabels labels = SceneLabeller.label(scene, seed);
        FilmTracks tracks = TrueTracks.sample(scene, FRAMES_PER_SECOND, noise, seed);
        return new EventFilm(
                scene.name() + ", " + seed,
                scene.durationSeconds() / SECONDS_PER_HOUR,
                labels.events().stream().map(EventMark::of).toList(),
                findings(scene, tracks, standards, broken),
                labels.unclear(),
                Optional.of(Identities.same()));
    }

    private static List<EventMark> findings(
            PlayedScene scene, FilmTracks tracks, Standards standards, List<String> broken) {
        try {
            return EventMark.of(
                    Measurement.measure(tracks, scene.rules(), standards).all());
        } catch (IllegalArgumentException | IllegalStateException e) {
            broken.add(scene.name() + " (" + e.getMessage() + ")");
            return List.of();
        }
    }
}
