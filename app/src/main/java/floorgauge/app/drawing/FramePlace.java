package floorgauge.app.drawing;

import floorgauge.court.floor.PixelPoint;

/**
 * How a frame's pixels lie on a drawing of the cut-out part. The centre of the top left pixel is at (0, 0) of the picture
 * frame, so its corner is half a pixel away.
 *
 * @param crop the part shown
 */
record FramePlace(Crop crop) {

    /** Width of every frame drawing in units. */
    static final double WIDTH = 320;

    double height() {
        return WIDTH * crop.height() / crop.width();
    }

    double x(double pixelX) {
        return (pixelX + 0.5 - crop.left()) * WIDTH / crop.width();
    }

    double y(double pixelY) {
        return (pixelY + 0.5 - crop.top()) * WIDTH / crop.width();
    }

    double[] at(PixelPoint pixel) {
        return new double[] {x(pixel.x()), y(pixel.y())};
    }

    boolean holds(PixelPoint pixel) {
        double px = x(pixel.x());
        double py = y(pixel.y());
        return px >= 0 && px <= WIDTH && py >= 0 && py <= height();
    }
}
