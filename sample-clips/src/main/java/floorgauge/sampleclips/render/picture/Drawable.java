package floorgauge.sampleclips.render.picture;

import floorgauge.sampleclips.render.camera.Camera;
import floorgauge.sampleclips.render.mesh.Mesh;

/** A mesh during one exposure: where its vertices stand when the shutter opens and closes, and the light they send. */
final class Drawable {

    /** Owner of the ball. */
    static final int BALL = -1;

    /** Triangles in a row that are passed over together where they lie in other rows. */
    static final int CHUNK = 48;

    /** Id of a person, {@link #BALL}, or 0 for fittings. */
    final int owner;

    final Mesh mesh;
    final JerseyNumber number;
    /** Court frame, 3 a vertex, when the shutter opens. */
    final float[] open;
    /** Court frame, 3 a vertex, when the shutter closes. */
    final float[] close;
    /** Light that leaves each vertex, 3 a vertex. */
    final float[] light;
    /** For each sample: column, row and 1 / depth a vertex; 1 / depth 0 where a vertex has no picture. */
    final float[][] screen;
    /** For each sample: first and last row that the mesh may touch. */
    final float[] top;

    final float[] bottom;
    /** For each sample and {@link #CHUNK} triangles: first and last row that they may touch. */
    final float[][] chunkTop;

    final float[][] chunkBottom;

    Drawable(int owner, Mesh mesh, JerseyNumber number, int samples) {
        this.owner = owner;
        this.mesh = mesh;
        this.number = number;
        open = new float[3 * mesh.vertexCount()];
        close = new float[3 * mesh.vertexCount()];
        light = new float[3 * mesh.vertexCount()];
        screen = new float[samples][3 * mesh.vertexCount()];
        top = new float[samples];
        bottom = new float[samples];
        int chunks = (mesh.triangles().length / 3 + CHUNK - 1) / CHUNK;
        chunkTop = new float[samples][chunks];
        chunkBottom = new float[samples][chunks];
    }

    /**
     * Projects the vertices for one sample.
     *
     * @param share of the exposure that has passed, 0 to 1
     * @param jitterX columns to shift the picture by
     * @param mirrored seen in the floor: heights change their sign
     */
    void project(int sample, Camera camera, double share, double jitterX, double jitterY, boolean mirrored) {
        double[] out = new double[3];
        float[] to = screen[sample];
        float low = Float.POSITIVE_INFINITY;
        float high = Float.NEGATIVE_INFINITY;
        double sign = mirrored ? -1 : 1;
        for (int i = 0; i < 3 * mesh.vertexCount(); i += 3) {
            double x = open[i] + share * (close[i] - open[i]);
            double y = open[i + 1] + share * (close[i + 1] - open[i + 1]);
            double z = open[i + 2] + share * (close[i + 2] - open[i + 2]);
            if (camera.project(x, y, sign * z, out)) {
                to[i] = (float) (out[0] + jitterX);
                to[i + 1] = (float) (out[1] + jitterY);
                to[i + 2] = (float) (1 / out[2]);
                low = Math.min(low, to[i + 1]);
                high = Math.max(high, to[i + 1]);
            } else {
                to[i + 2] = 0;
            }
        }
        top[sample] = low;
        bottom[sample] = high;
        chunks(to, chunkTop[sample], chunkBottom[sample]);
    }

    private void chunks(float[] to, float[] tops, float[] bottoms) {
        int[] corners = mesh.triangles();
        for (int chunk = 0; chunk < tops.length; chunk++) {
            float low = Float.POSITIVE_INFINITY;
            float high = Float.NEGATIVE_INFINITY;
            int end = Math.min(corners.length, 3 * CHUNK * (chunk + 1));
            for (int i = 3 * CHUNK * chunk; i < end; i++) {
                float row = to[3 * corners[i] + 1];
                low = row < low ? row : low;
                high = row > high ? row : high;
            }
            tops[chunk] = low;
            bottoms[chunk] = high;
        }
    }
}
