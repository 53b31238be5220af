package floorgauge.sampleclips.render.picture;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Joint;
import floorgauge.sampleclips.render.body.BallMesh;
import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.value.Vec3;
import floorgauge.sampleclips.scene.BallState;
import floorgauge.sampleclips.scene.PersonState;
import floorgauge.sampleclips.scene.SceneState;
import floorgauge.sampleclips.truth.BallTruth;
import floorgauge.sampleclips.truth.FrameTruth;
import floorgauge.sampleclips.truth.JointTruth;
import floorgauge.sampleclips.truth.PersonTruth;
import floorgauge.sampleclips.truth.Visibility;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A drawing of the frame in the middle of its exposure, without shift or blur, that keeps who is seen at each pixel and how
 * far away. Boxes, visible fractions and the visibility of joints are read off it.
 */
final class TruthPass {

    /** A joint lies this deep under skin and cloth at most, metres; what lies deeper is behind something else. */
    private static final double UNDER_SKIN = 0.17;

    private static final double FACE_UNDER_SKIN = 0.05;

    private final int width;
    private final int height;
    private final int sample;
    /** Place of what is seen at a pixel at which something is. */
    private final int[] place;

    private final float[] inverseDepth;
    /** For each band and drawable, pixels that it covers, and those of them at which it is seen. */
    private final int[][] covered;

    private final int[][] seen;
    private List<Drawable> all = List.of();
    private Camera camera;

    TruthPass(int width, int height, int bandCount, int sample) {
        this.width = width;
        this.height = height;
        this.sample = sample;
        place = new int[width * height];
        inverseDepth = new float[width * height];
        covered = new int[bandCount][];
        seen = new int[bandCount][];
    }

    void begin(List<Drawable> drawables, Camera middle) {
        all = drawables;
        camera = middle;
    }

    void draw(List<Drawable> drawables, int from, int to, Band band, int bandIndex) {
        band.begin(from, to - from);
        band.beginCounting();
        int[] counts = new int[drawables.size()];
        for (int i = 0; i < counts.length; i++) {
            if (drawables.get(i).mesh.veil() >= 1) {
                counts[i] = band.draw(drawables.get(i), i, sample, true);
            }
        }
        covered[bandIndex] = counts;
        seen[bandIndex] = new int[counts.length];
        Arrays.fill(inverseDepth, from * width, to * width, 0);
        for (int row = 0; row < to - from; row++) {
            for (int x = band.from[row]; x <= band.to[row]; x++) {
                int here = row * width + x;
                if (band.inverseDepth[here] > 0) {
                    int there = (from + row) * width + x;
                    inverseDepth[there] = band.inverseDepth[here];
                    place[there] = band.place(here);
                    seen[bandIndex][place[there]]++;
                }
            }
        }
    }

    FrameTruth of(
            long index, double timeSeconds, double sceneSeconds, Camera camera, SceneState state, List<Actor> actors) {
        List<PersonTruth> people = new ArrayList<>();
        for (int i = 0; i < actors.size(); i++) {
            people.add(person(actors.get(i), state.people().get(i)));
        }
        return new FrameTruth(
                index, timeSeconds, sceneSeconds, camera, people, state.ball().map(this::ball));
    }

    private static int sum(int[][] bands, int place) {
        int sum = 0;
        for (int[] band : bands) {
            sum += band[place];
        }
        return sum;
    }

    private PersonTruth person(Actor actor, PersonState state) {
        int own = all.indexOf(actor.drawable);
        Optional<ImageBox> box = box(actor.drawable);
        double inside = box.map(this::shareInside).orElse(0.0);
        int covers = sum(covered, own);
        double fraction = covers == 0 ? 0 : inside * sum(seen, own) / covers;
        List<JointTruth> joints = new ArrayList<>();
        for (Joint joint : Joint.values()) {
            joints.add(joint(actor, own, joint));
        }
        return new PersonTruth(state, inside > 0 ? box : Optional.empty(), Math.min(1, fraction), joints);
    }

    /** Around all vertices in the middle of the exposure; empty if any lies behind the camera. */
    private Optional<ImageBox> box(Drawable d) {
        float[] s = d.screen[sample];
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < s.length; i += 3) {
            if (s[i + 2] == 0) {
                return Optional.empty();
            }
            left = Math.min(left, s[i]);
            right = Math.max(right, s[i]);
        }
        return Optional.of(new ImageBox(
                left, d.top[sample], Math.max(1e-3, right - left), Math.max(1e-3, d.bottom[sample] - d.top[sample])));
    }

    private double shareInside(ImageBox box) {
        ImageBox picture = new ImageBox(-0.5, -0.5, width, height);
        return box.intersectionArea(picture) / box.area();
    }

    private JointTruth joint(Actor actor, int own, Joint joint) {
        Vec3 p = actor.skeleton().joint(joint);
        Optional<PixelPoint> pixel = camera.pixelAt(p.x(), p.y(), p.z());
        return new JointTruth(p.x(), p.y(), p.z(), pixel, visibility(own, joint, p, pixel));
    }

    private Visibility visibility(int own, Joint joint, Vec3 p, Optional<PixelPoint> pixel) {
        if (pixel.isEmpty()) {
            return Visibility.OUTSIDE;
        }
        int x = (int) Math.round(pixel.get().x());
        int y = (int) Math.round(pixel.get().y());
        if (x < 0 || y < 0 || x >= width || y >= height) {
            return Visibility.OUTSIDE;
        }
        int i = y * width + x;
        if (inverseDepth[i] == 0) {
            return Visibility.SEEN;
        }
        double[] out = new double[3];
        camera.project(p.x(), p.y(), p.z(), out);
        double before = out[2] - 1 / inverseDepth[i];
        boolean face = joint.ordinal() <= Joint.RIGHT_EAR.ordinal();
        double allowed = place[i] == own ? (face ? FACE_UNDER_SKIN : UNDER_SKIN) : 0.01;
        return before > allowed ? Visibility.HIDDEN : Visibility.SEEN;
    }

    private BallTruth ball(BallState state) {
        double[] out = new double[3];
        if (!camera.project(state.xMetres(), state.yMetres(), state.zMetres(), out)) {
            return new BallTruth(state, Optional.empty(), 0, 0);
        }
        double radius = BallMesh.RADIUS * camera.lens().fx() / out[2];
        int own = all.size() - 1;
        int covers = sum(covered, own);
        double fraction = covers == 0 ? 0 : Math.min(1, (double) sum(seen, own) / covers);
        return new BallTruth(state, Optional.of(new PixelPoint(out[0], out[1])), radius, fraction);
    }
}
