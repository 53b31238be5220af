package floorgauge.app.drawing;

import floorgauge.court.track.ImageBox;
import java.util.Collection;

/**
 * The part of a frame that is shown, in whole pixels of the film.
 *
 * @param left left edge, at least 0
 * @param top upper edge, at least 0
 * @param width at least 1
 * @param height at least 1
 */
public record Crop(int left, int top, int width, int height) {

    /** Width over height of every frame on a sheet, so that a strip of three has one height. */
    public static final double ASPECT = 4.0 / 3;

    /** Room about the players, as a share of the mean height of their boxes. */
    private static final double ROOM = 0.45;

    /** Nothing smaller is cut out, as a share of the film's height: a coach must see where on the floor it is. */
    private static final double LEAST_HEIGHT = 0.4;

    public Crop {
        if (left < 0 || top < 0 || width < 1 || height < 1) {
            throw new IllegalArgumentException(
                    "a crop lies in the picture: " + left + ", " + top + ", " + width + " x " + height);
        }
    }

    /** The part of a picture that shows all boxes with room about them; the middle of the picture without any. */
    public static Crop around(Collection<ImageBox> boxes, int pictureWidth, int pictureHeight) {
        double largest = Math.min(pictureWidth, pictureHeight * ASPECT);
        if (boxes.isEmpty()) {
            return fit(pictureWidth / 2.0, pictureHeight / 2.0, largest, pictureWidth, pictureHeight);
        }
        double room =
                ROOM * boxes.stream().mapToDouble(ImageBox::height).average().orElseThrow();
        double left = boxes.stream().mapToDouble(ImageBox::left).min().orElseThrow() - room;
        double right = boxes.stream().mapToDouble(ImageBox::right).max().orElseThrow() + room;
        double top = boxes.stream().mapToDouble(ImageBox::top).min().orElseThrow() - room;
        double bottom = boxes.stream().mapToDouble(ImageBox::bottom).max().orElseThrow() + room;
        double height = Math.max(bottom - top, LEAST_HEIGHT * pictureHeight);
        double width = Math.min(largest, Math.max(right - left, height * ASPECT));
        return fit((left + right) / 2, (top + bottom) / 2, width, pictureWidth, pictureHeight);
    }

    private static Crop fit(double centreX, double centreY, double width, int pictureWidth, int pictureHeight) {
        int w = (int) Math.max(1, Math.min(pictureWidth, Math.round(width)));
        int h = (int) Math.max(1, Math.min(pictureHeight, Math.round(width / ASPECT)));
        int left = (int) Math.round(Math.max(0, Math.min(pictureWidth - w, centreX - w / 2.0)));
        int top = (int) Math.round(Math.max(0, Math.min(pictureHeight - h, centreY - h / 2.0)));
        return new Crop(left, top, w, h);
    }
}
