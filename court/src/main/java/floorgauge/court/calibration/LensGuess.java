package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;
import floorgauge.court.lines.LineSegment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A first guess of the lens: of a few strengths the one under which most of the straight paint points to two vanishing
 * points. Straight lines through a lens that bends point to none.
 *
 * <p>The idea that straight lines calibrate a lens: Brown, Close-range camera calibration (Photogrammetric Engineering 37,
 * 1971), the plumb-line method.
 */
final class LensGuess {

    /** From a slight pincushion to the barrel of a phone's wide lens, in steps that the refinement bridges. */
    private static final double[] STRENGTHS = {0, -0.04, 0.04, -0.08, -0.12, -0.16, -0.20};

    private LensGuess() {}

    /** The lens of a picture of this size that these segments, as they are in the film, speak for. */
    static Lens of(List<LineSegment> segments, int width, int height) {
        Lens best = Lens.centred(width, height, 0);
        double most = -1;
        for (double strength : STRENGTHS) {
            Lens lens = Lens.centred(width, height, strength);
            List<LineSegment> straight = straightened(segments, lens);
            double length = straight.stream().mapToDouble(LineSegment::length).sum();
            List<VanishingPair> pairs = VanishingPair.find(straight, width, height, 1);
            double support = pairs.isEmpty() ? 0 : pairs.get(0).support() / length;
            if (support > most) {
                most = support;
                best = lens;
            }
        }
        return best;
    }

    /** The segments in the picture of an ideal camera, the longest first; without those beyond the lens's reach. */
    static List<LineSegment> straightened(List<LineSegment> segments, Lens lens) {
        List<LineSegment> straight = new ArrayList<>();
        for (LineSegment s : segments) {
            Optional<PixelPoint> first = lens.straighten(new PixelPoint(s.x1(), s.y1()));
            Optional<PixelPoint> last = lens.straighten(new PixelPoint(s.x2(), s.y2()));
            if (first.isPresent() && last.isPresent()) {
                straight.add(new LineSegment(
                        first.get().x(),
                        first.get().y(),
                        last.get().x(),
                        last.get().y(),
                        s.points()));
            }
        }
        straight.sort(Comparator.comparingDouble((LineSegment s) -> -s.length())
                .thenComparingDouble(LineSegment::x1)
                .thenComparingDouble(LineSegment::y1));
        return straight;
    }
}
