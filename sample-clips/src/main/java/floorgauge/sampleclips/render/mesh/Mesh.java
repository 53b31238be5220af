package floorgauge.sampleclips.render.mesh;

/**
 * What does not change about a mesh while it moves. Arrays are shared, not copied: treat them as constant.
 *
 * @param vertexCount number of vertices
 * @param triangles three vertex indices each
 * @param marks for each triangle: 0 plain, 1 carries the front number, 2 the back number
 * @param reflectance red, green, blue of each vertex in linear light
 * @param sheen share of light mirrored at right angles, for each vertex
 * @param texture for each vertex, metres to the reader's right and up from the middle of a number
 * @param veil share of a surface that hides what lies behind, 1 for solid bodies, less for glass and nets
 */
public record Mesh(
        int vertexCount,
        int[] triangles,
        byte[] marks,
        float[] reflectance,
        float[] sheen,
        float[] texture,
        double veil) {}
