package floorgauge.sampleclips.render.camera;

/** Where a camera stands and looks at any instant; the same answer every time, from any thread. */
@FunctionalInterface
public interface CameraPath {

    /** @param timeSeconds from the start of the scene; a little outside it is fine */
    Camera at(double timeSeconds);

    /** Whether the camera is the same at every instant, so that its background can be kept. */
    default boolean isStatic() {
        return false;
    }

    /** A camera that does not move: on a tripod, or screwed to a wall. */
    static CameraPath fixed(Camera camera) {
        return new CameraPath() {
            @Override
            public Camera at(double timeSeconds) {
                return camera;
            }

            @Override
            public boolean isStatic() {
                return true;
            }
        };
    }
}
