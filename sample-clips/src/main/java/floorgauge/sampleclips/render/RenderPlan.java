package floorgauge.sampleclips.render;

import floorgauge.court.rules.CourtEnd;
import floorgauge.sampleclips.render.camera.CameraPath;
import floorgauge.sampleclips.render.camera.CameraStyle;
import floorgauge.sampleclips.render.camera.FrameTimes;
import floorgauge.sampleclips.render.gym.Gym;
import floorgauge.sampleclips.render.picture.RenderSettings;
import floorgauge.sampleclips.render.value.Hash;
import floorgauge.sampleclips.scene.Scene;
import java.util.Objects;

/**
 * Everything that decides a rendered film.
 *
 * @param scene what happens
 * @param gym where
 * @param path camera
 * @param cameraStyle the camera in words
 * @param settings exposure
 * @param times of the frames
 * @param bitsPerSecond of the encoded film
 * @param seed all else was drawn from
 */
public record RenderPlan(
        Scene scene,
        Gym gym,
        CameraPath path,
        String cameraStyle,
        RenderSettings settings,
        FrameTimes times,
        long bitsPerSecond,
        long seed) {

    private static final long BITS_PER_SECOND = 2_000_000;
    private static final int WIDTH = 1280;
    private static final int HEIGHT = 720;

    public RenderPlan {
        Objects.requireNonNull(scene, "scene");
        Objects.requireNonNull(gym, "gym");
        Objects.requireNonNull(path, "path");
        Objects.requireNonNull(settings, "settings");
        Objects.requireNonNull(times, "times");
    }

    /** A practice on a clean floor, filmed at 1280 x 720 and 30 frames a second by a camera of a style. */
    public static RenderPlan of(Scene scene, CourtEnd end, CameraStyle style, long seed) {
        return in(Gym.clean(scene.rules(), gymSeed(seed)), scene, end, style, seed);
    }

    /** The seed of the gym in a film of a seed. */
    public static long gymSeed(long seed) {
        return Hash.of(seed, 1);
    }

    /** The same in a given gym. */
    public static RenderPlan in(Gym gym, Scene scene, CourtEnd end, CameraStyle style, long seed) {
        Scene all = new Bystanders(scene, gym, end, Hash.of(seed, 2));
        return new RenderPlan(
                all,
                gym,
                style.path(scene, gym, end, WIDTH, HEIGHT, Hash.of(seed, 3)),
                style.label(),
                RenderSettings.standard(Hash.of(seed, 4)),
                FrameTimes.even(30, scene.durationSeconds()),
                BITS_PER_SECOND,
                seed);
    }

    /** The same with other frame times. */
    public RenderPlan withTimes(FrameTimes other) {
        return new RenderPlan(scene, gym, path, cameraStyle, settings, other, bitsPerSecond, seed);
    }

    /** The same with another camera. */
    public RenderPlan withPath(CameraPath other, String words) {
        return new RenderPlan(scene, gym, other, words, settings, times, bitsPerSecond, seed);
    }

    /** The same at another bit rate. */
    public RenderPlan withBitsPerSecond(long bits) {
        return new RenderPlan(scene, gym, path, cameraStyle, settings, times, bits, seed);
    }
}
