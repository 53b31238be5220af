package floorgauge.sampleclips.render.picture;

import floorgauge.sampleclips.render.body.BallMesh;
import floorgauge.sampleclips.render.body.Performance;
import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.camera.CameraPath;
import floorgauge.sampleclips.render.gym.Fittings;
import floorgauge.sampleclips.render.gym.Gym;
import floorgauge.sampleclips.render.gym.GymSurfaces;
import floorgauge.sampleclips.render.mesh.MeshBuilder;
import floorgauge.sampleclips.render.value.Colour;
import floorgauge.sampleclips.render.value.Vec3;
import floorgauge.sampleclips.scene.BallState;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.Scene;
import floorgauge.sampleclips.scene.SceneState;
import floorgauge.sampleclips.truth.FrameTruth;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Renders frames of a scene. Bodies are drawn as triangles with a depth buffer, several times a frame, each time at another
 * instant of the exposure and another shift within the pixel; the average gives motion blur and smooth edges at once
 * (accumulation buffer: Haeberli and Akeley, 1990). The empty gym is sampled once a pixel with filtered patterns.
 *
 * <p>Not thread-safe; uses its own threads inside. The same input gives the same bytes on any number of threads.
 */
public final class FrameRenderer implements AutoCloseable {

    private static final int BAND_ROWS = 24;
    private static final double[] JITTER_X = {0.0625, -0.1875, 0.3125, -0.4375, -0.3125, 0.1875, 0.4375, -0.0625};
    private static final double[] JITTER_Y = {-0.1875, 0.1875, 0.0625, -0.0625, 0.3125, 0.4375, -0.3125, -0.4375};

    private final Scene scene;
    private final CameraPath path;
    private final RenderSettings settings;
    private final int width;
    private final int height;
    private final GymSurfaces surfaces;
    private final Background background;
    private final FloorShade shade;
    private final Mirror mirror;
    private final BodyLight[] bodyLights;
    private final Band[] bands;
    private final Parallel parallel;
    private final List<Actor> actors = new ArrayList<>();
    private final List<Drawable> fittings = new ArrayList<>();
    private final BallMesh ballMesh = new BallMesh();
    private final Drawable ball;
    /** For each thread, the light of a band before and after bodies are drawn. */
    private final float[][] rooms;

    private final float[][] lights;
    private final byte[] bgr;
    private final Sensor sensor;
    private final TruthPass truth;
    private Camera filled;

    public FrameRenderer(Scene scene, Gym gym, CameraPath path, RenderSettings settings) {
        this.scene = scene;
        this.path = path;
        this.settings = settings;
        width = path.at(0).lens().width();
        height = path.at(0).lens().height();
        surfaces = new GymSurfaces(gym);
        background = new Background(surfaces, width, height);
        shade = new FloorShade(surfaces.light(), gym.halfLengthMetres(), gym.halfWidthMetres());
        mirror = new Mirror(width, height);
        parallel = new Parallel(settings.threads());
        int bandCount = (height + BAND_ROWS - 1) / BAND_ROWS;
        bands = new Band[settings.threads()];
        bodyLights = new BodyLight[settings.threads()];
        for (int i = 0; i < settings.threads(); i++) {
            bands[i] = new Band(width, BAND_ROWS);
            bodyLights[i] = new BodyLight(surfaces.light(), Colour.linear(gym.woodRgb()));
        }
        ballMesh.pose(new Vec3(0, 0, 1), 0);
        ball = new Drawable(Drawable.BALL, ballMesh.mesh(), null, settings.samples() + 2);
        addActors();
        addFittings(gym);
        rooms = new float[settings.threads()][3 * width * BAND_ROWS];
        lights = new float[settings.threads()][3 * width * BAND_ROWS];
        bgr = new byte[3 * width * height];
        sensor = new Sensor(settings.gain(), settings.noise(), settings.drift(), settings.seed());
        truth = new TruthPass(width, height, bandCount, settings.samples());
    }

    private void addActors() {
        int steps = (int) Math.ceil(scene.durationSeconds() * Performance.RATE) + 1;
        List<List<PersonState>> courses = new ArrayList<>();
        for (int i = 0; i < scene.people().size(); i++) {
            courses.add(new ArrayList<>(steps));
        }
        for (int step = 0; step < steps; step++) {
            SceneState state = scene.at(Math.min(scene.durationSeconds(), (double) step / Performance.RATE));
            for (int i = 0; i < courses.size(); i++) {
                courses.get(i).add(state.people().get(i));
            }
        }
        for (int i = 0; i < courses.size(); i++) {
            actors.add(new Actor(scene.people().get(i), courses.get(i), settings.samples() + 2));
        }
    }

    private void addFittings(Gym gym) {
        double[] eye = path.at(0).position();
        for (Fittings.Fitting fitting : Fittings.of(gym)) {
            MeshBuilder b = fitting.builder();
            Drawable d = new Drawable(0, b.mesh(fitting.veil()), null, settings.samples() + 2);
            System.arraycopy(b.points(), 0, d.open, 0, d.open.length);
            System.arraycopy(b.points(), 0, d.close, 0, d.close.length);
            bodyLights[0].shade(d.mesh, b.points(), b.normals(), eye, false, d.light);
            fittings.add(d);
        }
    }

    /** Picture width in pixels. */
    public int width() {
        return width;
    }

    /** Picture height in pixels. */
    public int height() {
        return height;
    }

    /**
     * Renders one frame.
     *
     * @param index of the frame; decides its noise
     * @param timeSeconds when the shutter opens
     * @return blue, green, red bytes, row by row; reused by the next call
     */
    public byte[] render(long index, double timeSeconds) {
        pose(timeSeconds);
        Camera[] cameras = cameras(timeSeconds);
        List<Drawable> all = drawables();
        project(all, cameras);
        shade.cast(shadeBodies(), parallel);
        Camera middle = cameras[settings.samples()];
        mirror.draw(all, settings.samples() + 1, parallel, bands);
        truth.begin(all, middle);
        boolean empty = filled == null || !path.isStatic();
        parallel.forEach((height + BAND_ROWS - 1) / BAND_ROWS, (band, thread) -> {
            int from = band * BAND_ROWS;
            int to = Math.min(height, from + BAND_ROWS);
            if (empty) {
                background.fill(middle, from, to);
            }
            compose(all, from, to, thread);
            sensor.develop(lights[thread], width, height, from, to, index, timeSeconds, bgr);
            truth.draw(all, from, to, bands[thread], band);
        });
        filled = middle;
        return bgr;
    }

    /** What is true of the frame that was rendered last. */
    public FrameTruth truth(long index, double timeSeconds) {
        double middle = middle(timeSeconds);
        return truth.of(index, timeSeconds, middle, path.at(middle), state(middle), actors);
    }

    private double middle(double timeSeconds) {
        return timeSeconds + settings.shutterSeconds() / 2;
    }

    private SceneState state(double timeSeconds) {
        return scene.at(Math.max(0, Math.min(scene.durationSeconds(), timeSeconds)));
    }

    private void pose(double timeSeconds) {
        double[] times = {timeSeconds, middle(timeSeconds), timeSeconds + settings.shutterSeconds()};
        SceneState[] states = {state(times[0]), state(times[1]), state(times[2])};
        List<Optional<BallState>> balls = List.of(states[0].ball(), states[1].ball(), states[2].ball());
        double[] eye = path.at(times[1]).position();
        parallel.forEach(actors.size(), (i, thread) -> {
            PersonState[] own = {
                states[0].people().get(i),
                states[1].people().get(i),
                states[2].people().get(i)
            };
            actors.get(i).expose(times, own, balls, eye, bodyLights[thread]);
        });
        if (states[1].ball().isPresent()) {
            poseBall(times, states, eye);
        }
    }

    private void poseBall(double[] times, SceneState[] states, double[] eye) {
        place(states[0].ball().orElseThrow(), times[0], ball.open);
        place(states[2].ball().orElseThrow(), times[2], ball.close);
        ballMesh.pose(at(states[1].ball().orElseThrow()), times[1] * 9);
        bodyLights[0].shade(ballMesh.mesh(), ballMesh.points(), ballMesh.normals(), eye, false, ball.light);
    }

    private void place(BallState state, double timeSeconds, float[] to) {
        ballMesh.pose(at(state), timeSeconds * 9);
        System.arraycopy(ballMesh.points(), 0, to, 0, to.length);
    }

    private static Vec3 at(BallState b) {
        return new Vec3(b.xMetres(), b.yMetres(), b.zMetres());
    }

    /** One camera a sample, then that of the middle of the exposure twice: for the truth and for the mirrored picture. */
    private Camera[] cameras(double timeSeconds) {
        Camera[] out = new Camera[settings.samples() + 2];
        for (int s = 0; s < settings.samples(); s++) {
            out[s] = path.at(timeSeconds + share(s) * settings.shutterSeconds());
        }
        out[settings.samples()] = path.at(middle(timeSeconds));
        out[settings.samples() + 1] = out[settings.samples()];
        return out;
    }

    private double share(int sample) {
        return (sample + 0.5) / settings.samples();
    }

    private List<Drawable> drawables() {
        List<Drawable> all = new ArrayList<>(fittings);
        for (Actor actor : actors) {
            all.add(actor.drawable);
        }
        if (scene.at(0).ball().isPresent()) {
            all.add(ball);
        }
        return all;
    }

    private void project(List<Drawable> all, Camera[] cameras) {
        int n = settings.samples();
        parallel.forEach(all.size(), (i, thread) -> {
            Drawable d = all.get(i);
            for (int s = 0; s < n; s++) {
                d.project(s, cameras[s], share(s), JITTER_X[s & 7], JITTER_Y[s & 7], false);
            }
            d.project(n, cameras[n], 0.5, 0, 0, false);
            d.project(n + 1, cameras[n + 1], 0.5, 0, 0, true);
        });
    }

    private List<float[]> shadeBodies() {
        List<float[]> bodies = new ArrayList<>();
        for (Actor actor : actors) {
            bodies.add(actor.balls());
        }
        if (scene.at(0).ball().isPresent()) {
            float[] p = ball.open;
            int last = 3 * (ball.mesh.vertexCount() - 1);
            bodies.add(new float[] {
                (p[0] + p[last]) / 2, (p[1] + p[last + 1]) / 2, (p[2] + p[last + 2]) / 2, (float) BallMesh.RADIUS
            });
        }
        return bodies;
    }

    private void compose(List<Drawable> all, int from, int to, int thread) {
        Band band = bands[thread];
        float[] light = lights[thread];
        float[] room = rooms[thread];
        gym(from, to, light);
        System.arraycopy(light, 0, room, 0, 3 * width * (to - from));
        band.begin(from, to - from);
        int n = settings.samples();
        float[] rgb = new float[3];
        for (int s = 0; s < n; s++) {
            band.clear();
            for (int i = 0; i < all.size(); i++) {
                Drawable d = all.get(i);
                if (d.mesh.veil() >= 1 || (s * 5 % n) < d.mesh.veil() * n) {
                    band.draw(d, i, s, false);
                }
            }
            accumulate(all, band, 1f / n, room, light, rgb);
        }
    }

    private void accumulate(List<Drawable> all, Band band, float share, float[] room, float[] light, float[] rgb) {
        for (int row = 0; row < band.rows; row++) {
            for (int x = band.from[row]; x <= band.to[row]; x++) {
                int pixel = row * width + x;
                if (band.inverseDepth[pixel] > 0) {
                    band.light(all, pixel, rgb, 0);
                    for (int c = 0; c < 3; c++) {
                        light[3 * pixel + c] += share * (rgb[c] - room[3 * pixel + c]);
                    }
                }
            }
        }
    }

    /** The empty gym with the shade and the mirror images of this frame's bodies. */
    private void gym(int from, int to, float[] light) {
        System.arraycopy(background.bare, 3 * from * width, light, 0, 3 * (to - from) * width);
        for (int y = from; y < to; y++) {
            int firstMirrored = mirror.from(y);
            int lastMirrored = mirror.to(y);
            for (int x = 0; x < width; x++) {
                int i = y * width + x;
                boolean mirrors = x >= firstMirrored && x <= lastMirrored;
                boolean floor = !Float.isNaN(background.floorX[i]);
                float keep = floor ? (float) shade.kept(background.floorX[i], background.floorY[i]) : 1;
                if (keep != 1 || mirrors) {
                    float clear = floor && mirrors ? 1 - mirror.cover(i) : 1;
                    for (int c = 0; c < 3; c++) {
                        float own = keep * background.diffuse[3 * i + c] + clear * background.mirrored[3 * i + c];
                        float seen = mirrors ? mirror.light(i, c) : 0;
                        light[3 * (i - from * width) + c] = own + background.mirror[i] * seen;
                    }
                }
            }
        }
    }

    @Override
    public void close() {
        parallel.close();
    }
}
