package floorgauge.sampleclips.render.body;

import floorgauge.sampleclips.render.mesh.Mesh;
import floorgauge.sampleclips.render.mesh.MeshBuilder;
import floorgauge.sampleclips.render.value.Colour;
import floorgauge.sampleclips.render.value.Vec3;

/** The ball: 0.12 m radius (size 7 measures 0.749 to 0.780 m round, FIBA rules, from memory), orange with dark seams. */
public final class BallMesh {

    /** Metres. */
    public static final double RADIUS = 0.1215;

    private static final int RINGS = 20;
    private static final int SEGMENTS = 24;

    private final MeshBuilder builder = new MeshBuilder();
    private final float[] leather = Colour.linear(0xC8682D);
    private final float[] seam = Colour.linear(0x2A1C14);
    private Mesh mesh;

    public Mesh mesh() {
        return mesh;
    }

    /** Positions of the last pose, 3 a vertex, court frame. */
    public float[] points() {
        return builder.points();
    }

    /** Unit normals of the last pose. */
    public float[] normals() {
        return builder.normals();
    }

    /** Moves the ball; it spins with the way it has gone. */
    public void pose(Vec3 centre, double spinRadians) {
        builder.restart();
        builder.tube(SEGMENTS);
        Vec3 axis = new Vec3(0.36, 0.48, 0.8);
        Vec3 side = new Vec3(1, 0, 0).squaredTo(axis).turned(axis, spinRadians);
        Vec3 front = axis.cross(side);
        for (int r = 0; r <= RINGS; r++) {
            double latitude = Math.PI * r / RINGS - Math.PI / 2;
            double round = RADIUS * Math.max(1e-4, Math.cos(latitude));
            builder.ring(centre.plus(RADIUS * Math.sin(latitude), axis), side, front, round, round, round, 1);
        }
        builder.closeTube(0, 0);
        if (mesh == null) {
            paint();
            mesh = builder.mesh(1);
        }
    }

    private void paint() {
        for (int r = 0; r <= RINGS; r++) {
            for (int k = 0; k < SEGMENTS; k++) {
                boolean dark = r == RINGS / 2 || k == 0 || k == SEGMENTS / 2;
                builder.colour(r * SEGMENTS + k, dark ? seam : leather, 0.02);
            }
        }
    }
}
