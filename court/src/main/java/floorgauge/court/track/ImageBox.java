package floorgauge.court.track;

import floorgauge.court.floor.PixelPoint;

/**
 * An upright box in the picture, in pixels of the film as stored; may reach beyond the picture.
 *
 * @param left left edge
 * @param top top edge
 * @param width above 0
 * @param height above 0
 */
public record ImageBox(double left, double top, double width, double height) {

    public ImageBox {
        if (!Double.isFinite(left) || !Double.isFinite(top)) {
            throw new IllegalArgumentException("box must be finite: " + left + ", " + top);
        }
        if (!(width > 0 && height > 0 && Double.isFinite(width) && Double.isFinite(height))) {
            throw new IllegalArgumentException("box must have a positive size: " + width + " x " + height);
        }
    }

    public double right() {
        return left + width;
    }

    public double bottom() {
        return top + height;
    }

    public double area() {
        return width * height;
    }

    /** The middle of the lower edge, where a standing person's feet are. */
    public PixelPoint bottomCentre() {
        return new PixelPoint(left + width / 2, bottom());
    }

    /** Intersection over union, 0 to 1. */
    public double intersectionOverUnion(ImageBox other) {
        double common = intersectionArea(other);
        // Right and bottom edges are rounded sums: a box against itself may come out a hair above 1.
        return Math.min(1, common / (area() + other.area() - common));
    }

    /** Area in square pixels that both boxes cover. */
    public double intersectionArea(ImageBox other) {
        double w = Math.min(right(), other.right()) - Math.max(left, other.left);
        double h = Math.min(bottom(), other.bottom()) - Math.max(top, other.top);
        return w > 0 && h > 0 ? w * h : 0;
    }
}
