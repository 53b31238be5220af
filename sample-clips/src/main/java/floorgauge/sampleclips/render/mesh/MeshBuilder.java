package floorgauge.sampleclips.render.mesh;

import floorgauge.sampleclips.render.value.Vec3;
import java.util.Arrays;

/**
 * Writes the vertices of tubes, boxes and spheres one after the other. The first pass over a body makes the topology and
 * colours; later passes with the same calls only move the vertices, so a pass must always make the same calls.
 */
public final class MeshBuilder {

    private static final int FIRST_SIZE = 1024;

    private float[] points = new float[3 * FIRST_SIZE];
    private float[] normals = new float[3 * FIRST_SIZE];
    private float[] colours = new float[3 * FIRST_SIZE];
    private float[] sheen = new float[FIRST_SIZE];
    private float[] texture = new float[2 * FIRST_SIZE];
    private int[] triangles = new int[3 * FIRST_SIZE];
    private byte[] marks = new byte[FIRST_SIZE];
    private int vertexCount;
    private int triangleCount;
    private boolean topologyDone;
    private int ringStart;
    private int ringSegments;
    private int ringCount;

    /** Starts a pass. */
    public void restart() {
        topologyDone = topologyDone || triangleCount > 0;
        vertexCount = 0;
    }

    /** Positions of the current pass, court frame, 3 a vertex; reused by the next pass. */
    public float[] points() {
        return points;
    }

    /** Unit normals of the current pass; reused by the next pass. */
    public float[] normals() {
        return normals;
    }

    /** The fixed part, from the first pass. */
    public Mesh mesh(double veil) {
        return new Mesh(
                vertexCount,
                Arrays.copyOf(triangles, 3 * triangleCount),
                Arrays.copyOf(marks, triangleCount),
                Arrays.copyOf(colours, 3 * vertexCount),
                Arrays.copyOf(sheen, vertexCount),
                Arrays.copyOf(texture, 2 * vertexCount),
                veil);
    }

    /** Starts a tube whose rings have this many vertices. */
    public void tube(int segments) {
        ringStart = vertexCount;
        ringSegments = segments;
        ringCount = 0;
    }

    /**
     * Adds a ring to the tube: an ellipse around a centre, the front half with another depth than the back one.
     *
     * @param side unit direction at angle 0
     * @param front unit direction at a quarter turn
     * @param squareness 1 an ellipse; below, nearer a rectangle
     */
    public void ring(Vec3 centre, Vec3 side, Vec3 front, double rSide, double rFront, double rBack, double squareness) {
        for (int k = 0; k < ringSegments; k++) {
            double angle = 2 * Math.PI * k / ringSegments;
            double c = bulge(Math.cos(angle), squareness);
            double s = bulge(Math.sin(angle), squareness);
            double depth = s > 0 ? rFront : rBack;
            vertex(
                    centre.x() + c * rSide * side.x() + s * depth * front.x(),
                    centre.y() + c * rSide * side.y() + s * depth * front.y(),
                    centre.z() + c * rSide * side.z() + s * depth * front.z());
        }
        ringCount++;
    }

    private static double bulge(double t, double squareness) {
        return squareness == 1 ? t : Math.signum(t) * Math.pow(Math.abs(t), squareness);
    }

    /** Adds a vertex; colours default to grey. */
    public int vertex(double x, double y, double z) {
        if (3 * vertexCount + 3 > points.length) {
            grow();
        }
        points[3 * vertexCount] = (float) x;
        points[3 * vertexCount + 1] = (float) y;
        points[3 * vertexCount + 2] = (float) z;
        return vertexCount++;
    }

    private void grow() {
        int size = points.length / 3 * 2;
        points = Arrays.copyOf(points, 3 * size);
        normals = Arrays.copyOf(normals, 3 * size);
        colours = Arrays.copyOf(colours, 3 * size);
        sheen = Arrays.copyOf(sheen, size);
        texture = Arrays.copyOf(texture, 2 * size);
    }

    /** Number of vertices so far in this pass. */
    public int vertexCount() {
        return vertexCount;
    }

    /** Whether colours and triangles are being recorded: true in the first pass alone. */
    public boolean recording() {
        return !topologyDone;
    }

    /** Colours a vertex in linear light. */
    public void colour(int vertex, float[] rgb, double shine) {
        if (!topologyDone) {
            System.arraycopy(rgb, 0, colours, 3 * vertex, 3);
            sheen[vertex] = (float) shine;
        }
    }

    /** Gives a vertex its place on a jersey number. */
    public void texture(int vertex, double right, double up) {
        if (!topologyDone) {
            texture[2 * vertex] = (float) right;
            texture[2 * vertex + 1] = (float) up;
        }
    }

    /** Joins the rings of the tube and finds its normals, outward from the ring's middle. */
    public void closeTube(int markFrom, int markTo) {
        if (!topologyDone) {
            for (int r = 0; r + 1 < ringCount; r++) {
                for (int k = 0; k < ringSegments; k++) {
                    quad(r, k, r >= markFrom && r < markTo);
                }
            }
        }
        for (int r = 0; r < ringCount; r++) {
            for (int k = 0; k < ringSegments; k++) {
                tubeNormal(r, k);
            }
        }
    }

    private void quad(int r, int k, boolean marked) {
        int next = (k + 1) % ringSegments;
        int a = ringStart + r * ringSegments + k;
        int b = ringStart + r * ringSegments + next;
        byte mark = 0;
        if (marked && k > 0 && k < ringSegments / 2 - 1) {
            mark = 1;
        } else if (marked && k > ringSegments / 2 && k < ringSegments - 1) {
            mark = 2;
        }
        triangle(a, b, a + ringSegments, mark);
        triangle(b, b + ringSegments, a + ringSegments, mark);
    }

    /** Adds a triangle in the first pass. */
    public void triangle(int a, int b, int c, byte mark) {
        if (topologyDone) {
            return;
        }
        if (3 * triangleCount + 3 > triangles.length) {
            triangles = Arrays.copyOf(triangles, triangles.length * 2);
            marks = Arrays.copyOf(marks, marks.length * 2);
        }
        triangles[3 * triangleCount] = a;
        triangles[3 * triangleCount + 1] = b;
        triangles[3 * triangleCount + 2] = c;
        marks[triangleCount++] = mark;
    }

    private void tubeNormal(int r, int k) {
        int before = ringStart + Math.max(0, r - 1) * ringSegments + k;
        int after = ringStart + Math.min(ringCount - 1, r + 1) * ringSegments + k;
        int left = ringStart + r * ringSegments + (k + ringSegments - 1) % ringSegments;
        int right = ringStart + r * ringSegments + (k + 1) % ringSegments;
        int self = ringStart + r * ringSegments + k;
        int across = ringStart + r * ringSegments + (k + ringSegments / 2) % ringSegments;
        float[] p = points;
        double ax = p[3 * after] - p[3 * before];
        double ay = p[3 * after + 1] - p[3 * before + 1];
        double az = p[3 * after + 2] - p[3 * before + 2];
        double bx = p[3 * right] - p[3 * left];
        double by = p[3 * right + 1] - p[3 * left + 1];
        double bz = p[3 * right + 2] - p[3 * left + 2];
        double nx = ay * bz - az * by;
        double ny = az * bx - ax * bz;
        double nz = ax * by - ay * bx;
        double out = nx * (p[3 * self] - p[3 * across])
                + ny * (p[3 * self + 1] - p[3 * across + 1])
                + nz * (p[3 * self + 2] - p[3 * across + 2]);
        double length = Math.sqrt(nx * nx + ny * ny + nz * nz);
        double scale = length < 1e-12 ? 0 : (out < 0 ? -1 : 1) / length;
        normals[3 * self] = (float) (nx * scale);
        normals[3 * self + 1] = (float) (ny * scale);
        normals[3 * self + 2] = (float) (nz * scale);
    }

    /** Sets a vertex' normal. */
    public void normal(int vertex, double x, double y, double z) {
        normals[3 * vertex] = (float) x;
        normals[3 * vertex + 1] = (float) y;
        normals[3 * vertex + 2] = (float) z;
    }

    /** Pushes a vertex along a direction; call between a tube's rings and its closing. */
    public void push(int vertex, Vec3 direction, double metres) {
        points[3 * vertex] += (float) (metres * direction.x());
        points[3 * vertex + 1] += (float) (metres * direction.y());
        points[3 * vertex + 2] += (float) (metres * direction.z());
    }

    /** Adds a box from its corner and three edges. */
    public void box(Vec3 corner, Vec3 a, Vec3 b, Vec3 c, float[] rgb) {
        Vec3[] edges = {a, b, c};
        for (int axis = 0; axis < 3; axis++) {
            Vec3 u = edges[(axis + 1) % 3];
            Vec3 v = edges[(axis + 2) % 3];
            Vec3 n = u.cross(v).unit();
            Vec3 out = n.dot(edges[axis]) > 0 ? n : n.times(-1);
            face(corner, u, v, out.times(-1), rgb);
            face(corner.plus(edges[axis]), u, v, out, rgb);
        }
    }

    private void face(Vec3 corner, Vec3 u, Vec3 v, Vec3 normal, float[] rgb) {
        int pieces = (int) Math.max(1, Math.min(12, Math.ceil(Math.max(u.length(), v.length()) / 0.4)));
        int first = vertexCount;
        for (int i = 0; i <= pieces; i++) {
            for (int j = 0; j <= pieces; j++) {
                Vec3 p = corner.plus((double) i / pieces, u).plus((double) j / pieces, v);
                int n = vertex(p.x(), p.y(), p.z());
                normal(n, normal.x(), normal.y(), normal.z());
                colour(n, rgb, 0);
            }
        }
        for (int i = 0; i < pieces; i++) {
            for (int j = 0; j < pieces; j++) {
                int a = first + i * (pieces + 1) + j;
                triangle(a, a + 1, a + pieces + 1, (byte) 0);
                triangle(a + 1, a + pieces + 2, a + pieces + 1, (byte) 0);
            }
        }
    }

    /** Adds a round bar between two points. */
    public void bar(Vec3 from, Vec3 to, double radius, int segments, float[] rgb) {
        Vec3 axis = to.minus(from).unit();
        Vec3 side = (Math.abs(axis.z()) > 0.9 ? new Vec3(1, 0, 0) : Vec3.UP).squaredTo(axis);
        Vec3 front = axis.cross(side);
        int first = vertexCount;
        tube(segments);
        for (int i = 0; i <= 3; i++) {
            ring(from.towards(to, i / 3.0), side, front, radius, radius, radius, 1);
        }
        closeTube(0, 0);
        for (int i = first; i < vertexCount; i++) {
            colour(i, rgb, 0.02);
        }
    }
}
