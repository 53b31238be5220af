package floorgauge.eval.film;

import floorgauge.sampleclips.render.RenderJob;
import floorgauge.sampleclips.render.RenderPlan;
import floorgauge.sampleclips.render.camera.CameraStyle;
import floorgauge.sampleclips.render.camera.FrameTimes;
import floorgauge.sampleclips.scenario.PlayedScene;
import floorgauge.sampleclips.scenario.ScenarioLibrary;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/**
 * A scene that nothing was tuned on, and how it is filmed.
 *
 * @param scenario name in the library
 * @param style of the camera
 * @param seed of people, gym, camera place and noise
 */
public record HeldOutFilm(String scenario, CameraStyle style, long seed) {

    /** Frames a second: half of a usual camera's, for half of the time. */
    public static final double FRAMES_PER_SECOND = 15;

    public HeldOutFilm {
        Objects.requireNonNull(scenario, "scenario");
        Objects.requireNonNull(style, "style");
    }

    /** What happens. */
    public PlayedScene scene() {
        return ScenarioLibrary.load(scenario, seed);
    }

    /** What is drawn. */
    public RenderPlan plan() {
        PlayedScene scene = scene();
        return RenderPlan.of(scene, scene.end(), style, seed)
                .withTimes(FrameTimes.even(FRAMES_PER_SECOND, scene.durationSeconds()));
    }

    /** Name of the film's files, without ending. */
    public String name() {
        return scenario + "-" + style.label() + "-" + seed;
    }

    /**
     * Renders the film with its truth, or leaves it as it is where it was rendered before.
     *
     * @return the film
     */
    public Path render(Path folder) {
        Path film = folder.resolve(name() + ".mp4");
        if (!Files.isRegularFile(film)) {
            new RenderJob(plan(), folder, name()).run((done, total) -> {});
        }
        return film;
    }
}
