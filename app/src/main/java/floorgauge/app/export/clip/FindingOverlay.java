package floorgauge.app.export.clip;

import floorgauge.app.drawing.FigureText;
import floorgauge.app.drawing.Limbs;
import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.BallObservation;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.Keypoint;
import floorgauge.court.track.PlayerObservation;
import floorgauge.court.track.PlayerSighting;
import floorgauge.court.track.Pose;
import floorgauge.events.diagram.PlayerLabels;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Mark;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.opencv.core.Scalar;

/** What a finding measured, drawn over one frame of its film. */
final class FindingOverlay {

    private static final int ENVELOPE_CORNERS = 32;

    /** A distance appears this long before its decisive moment and stays as long after it. */
    private static final double SHOWN_SECONDS = 0.7;

    /** The frame nearest to the decisive moment carries the finding's own figure. */
    private static final double SAME_MOMENT_SECONDS = 0.06;

    private static final double LIMB = 2;
    private static final double BYSTANDER_LIMB = 1;
    private static final double CASING = 2.4;
    private static final double BALL_RADIUS = 10;
    private static final double NAME_HEIGHT = 12;
    private static final double FIGURE_HEIGHT = 16;
    private static final double OFFSET = 30;
    private static final double ARROW_LENGTH = 13;
    private static final double ARROW_HALF_WIDTH = 3.2;
    private static final double OUTSIDE_TAIL = 22;
    private static final int MOST_NAMES = 12;

    /** Of a player's height in the picture, between where his feet are and where the homography has them. */
    private static final double MOST_SHIFT = 0.25;

    private final Finding finding;
    private final FloorView view;
    private final double filmScale;
    private final PlayerLabels labels;

    /**
     * @param view where floor points appear, pixels of the film
     * @param filmScale pixels of the picture drawn on, a pixel of the film
     * @param labels what tracks are called
     */
    FindingOverlay(Finding finding, FloorView view, double filmScale, PlayerLabels labels) {
        this.labels = labels;
        this.finding = finding;
        this.view = view;
        this.filmScale = filmScale;
    }

    /** Draws. */
    void draw(Pen pen, FloorFrame frame) {
        boolean floor = agrees(frame);
        frame.players().stream().filter(p -> !holdsRole(p)).forEach(p -> player(pen, p, false, floor));
        frame.players().stream().filter(this::holdsRole).forEach(p -> player(pen, p, true, floor));
        for (Mark mark : finding.marks()) {
            distance(mark, frame).filter(d -> floor).ifPresent(d -> dimension(pen, d));
        }
        frame.ball().flatMap(BallObservation::position).ifPresent(p -> ball(pen, p));
        List<double[]> taken = new ArrayList<>();
        frame.players().stream().filter(this::holdsRole).forEach(p -> name(pen, p, taken));
    }

    private boolean holdsRole(PlayerSighting player) {
        return finding.roles().stream().anyMatch(r -> r.trackId() == player.trackId());
    }

    /** A ring about the ball where it was seen in the picture; where its place was inferred nothing is drawn. */
    private void ball(Pen pen, PixelPoint pixel) {
        double[] centre = at(pixel);
        List<double[]> ring = new ArrayList<>();
        for (int i = 0; i < ENVELOPE_CORNERS; i++) {
            double angle = 2 * Math.PI * i / ENVELOPE_CORNERS;
            ring.add(new double[] {
                centre[0] + pen.units(BALL_RADIUS) * Math.cos(angle),
                centre[1] + pen.units(BALL_RADIUS) * Math.sin(angle)
            });
        }
        pen.outline(ring, 1.4 + CASING, Ink.INK);
        pen.outline(ring, 1.4, Ink.PAPER);
    }

    /**
     * Whether the homography holds for this frame: it does not while a camera moves away from where it was calibrated. Then half of the
     * players would stand elsewhere than their boxes do, and nothing is drawn on the floor.
     */
    private boolean agrees(FloorFrame frame) {
        double[] off = frame.players().stream()
                .map(PlayerSighting::observation)
                .filter(seen ->
                        seen.source() != FootSource.PREDICTED && seen.box().isPresent())
                .mapToDouble(seen -> view.pixelAt(seen.foot().mean())
                        .map(p -> p.distanceTo(seen.box().get().bottomCentre())
                                / seen.box().get().height())
                        .orElse(Double.POSITIVE_INFINITY))
                .sorted()
                .toArray();
        return off.length > 0 && off[off.length / 2] <= MOST_SHIFT;
    }

    private void player(Pen pen, PlayerSighting player, boolean holder, boolean floor) {
        PlayerObservation seen = player.observation();
        if (seen.source() == FootSource.PREDICTED) {
            if (holder) {
                seen.box().ifPresent(box -> hatched(pen, box));
            }
            return;
        }
        if (holder && floor) {
            List<double[]> ring = ring(seen.foot().mean());
            pen.outline(ring, 1.4 + CASING, Ink.INK);
            pen.outline(ring, 1.4, Ink.PAPER);
        }
        double width = holder ? LIMB : BYSTANDER_LIMB;
        seen.pose().ifPresent(pose -> {
            limbs(pen, pose, width + CASING, holder ? Ink.INK : Ink.QUIET);
            limbs(pen, pose, width, holder ? Ink.PAPER : Ink.FAINT);
        });
    }

    private void limbs(Pen pen, Pose pose, double width, Scalar colour) {
        for (Limbs.Limb limb : Limbs.ALL) {
            Keypoint from = pose.at(limb.from());
            Keypoint to = pose.at(limb.to());
            if (from.score() >= Limbs.LEAST_SCORE && to.score() >= Limbs.LEAST_SCORE) {
                double[] a = at(from.position());
                double[] b = at(to.position());
                pen.line(a[0], a[1], b[0], b[1], width, colour);
            }
        }
    }

    /** Not seen in this frame: hatched where the player is expected, never drawn as if seen. */
    private void hatched(Pen pen, ImageBox box) {
        double[] corner = at(new PixelPoint(box.left(), box.top()));
        double width = box.width() * filmScale;
        double height = box.height() * filmScale;
        double step = pen.units(9);
        for (double along = step; along < width + height; along += step) {
            double fromX = corner[0] + Math.min(along, width);
            double fromY = corner[1] + Math.max(0, along - width);
            double toX = corner[0] + Math.max(0, along - height);
            double toY = corner[1] + Math.min(along, height);
            pen.line(fromX, fromY, toX, toY, 1, Ink.FAINT);
        }
    }

    private List<double[]> ring(FloorPoint centre) {
        List<double[]> ring = new ArrayList<>();
        for (int i = 0; i < ENVELOPE_CORNERS; i++) {
            double angle = 2 * Math.PI * i / ENVELOPE_CORNERS;
            view.pixelAt(new FloorPoint(
                            centre.xMetres() + LiveDistance.ENVELOPE_METRES * Math.cos(angle),
                            centre.yMetres() + LiveDistance.ENVELOPE_METRES * Math.sin(angle)))
                    .ifPresent(p -> ring.add(at(p)));
        }
        return ring.size() == ENVELOPE_CORNERS ? ring : List.of();
    }

    private Optional<LiveDistance> distance(Mark mark, FloorFrame frame) {
        if (mark instanceof Mark.Distance between) {
            double off = Math.abs(between.timeSeconds() - frame.timeSeconds());
            Optional<PlayerObservation> from = seen(frame, between.fromTrackId());
            Optional<PlayerObservation> to = seen(frame, between.toTrackId());
            if (off > SHOWN_SECONDS || from.isEmpty() || to.isEmpty()) {
                return Optional.empty();
            }
            LiveDistance live = LiveDistance.between(from.get().foot(), to.get().foot(), between.figure());
            return Optional.of(
                    off <= SAME_MOMENT_SECONDS ? new LiveDistance(live.from(), live.to(), between.figure()) : live);
        }
        if (mark instanceof Mark.DistanceToPoint toPlace) {
            double off = Math.abs(toPlace.timeSeconds() - frame.timeSeconds());
            Optional<PlayerObservation> from = seen(frame, toPlace.fromTrackId());
            if (off > SHOWN_SECONDS || from.isEmpty()) {
                return Optional.empty();
            }
            LiveDistance live = LiveDistance.to(from.get().foot(), toPlace.to(), toPlace.figure());
            return Optional.of(
                    off <= SAME_MOMENT_SECONDS ? new LiveDistance(live.from(), live.to(), toPlace.figure()) : live);
        }
        return Optional.empty();
    }

    private static Optional<PlayerObservation> seen(FloorFrame frame, int trackId) {
        return frame.players().stream()
                .filter(p -> p.trackId() == trackId)
                .map(PlayerSighting::observation)
                .findFirst();
    }

    /** A dimension line below the feet, towards the camera, as on the sheet. */
    private void dimension(Pen pen, LiveDistance distance) {
        Optional<PixelPoint> first = view.pixelAt(distance.from());
        Optional<PixelPoint> second = view.pixelAt(distance.to());
        if (first.isEmpty() || second.isEmpty()) {
            return;
        }
        double[] a = at(first.get());
        double[] b = at(second.get());
        double[] left = a[0] <= b[0] ? a : b;
        double[] right = a[0] <= b[0] ? b : a;
        boolean beyond = FigureText.isBeyond(distance.figure());
        Scalar lines = beyond ? Ink.ACCENT_ON_FILM : Ink.PAPER;
        double length = Math.hypot(right[0] - left[0], right[1] - left[1]);
        double ux = length > 0 ? (right[0] - left[0]) / length : 1;
        double uy = length > 0 ? (right[1] - left[1]) / length : 0;
        double nx = -uy;
        double ny = ux;
        double down = pen.units(OFFSET);
        double[] l = {left[0] + nx * down, left[1] + ny * down};
        double[] r = {right[0] + nx * down, right[1] + ny * down};
        for (int pass = 0; pass < 2; pass++) {
            boolean casing = pass == 0;
            double more = casing ? CASING : 0;
            Scalar ink = casing ? Ink.INK : lines;
            extension(pen, left, nx, ny, 1 + more, ink);
            extension(pen, right, nx, ny, 1 + more, ink);
            boolean inside = length >= 3 * pen.units(ARROW_LENGTH);
            double tail = inside ? 0 : pen.units(OUTSIDE_TAIL);
            pen.line(l[0] - ux * tail, l[1] - uy * tail, r[0] + ux * tail, r[1] + uy * tail, 1.2 + more, ink);
            if (!casing) {
                double way = inside ? 1 : -1;
                arrow(pen, l, -ux * way, -uy * way, ink);
                arrow(pen, r, ux * way, uy * way, ink);
            }
        }
        Lettering lettering = new Lettering(pen, FIGURE_HEIGHT);
        String text = FigureText.of(distance.figure());
        double x = (l[0] + r[0]) / 2 - lettering.width(text) / 2;
        double limit = pen.picture().cols() - lettering.width(text) - pen.units(4);
        double below = Math.max(l[1], r[1]) + pen.units(FIGURE_HEIGHT * 1.9);
        lettering.drawCased(text, Math.max(pen.units(4), Math.min(limit, x)), below, beyond ? Ink.ACCENT : Ink.INK);
    }

    private static void extension(Pen pen, double[] end, double nx, double ny, double width, Scalar ink) {
        double near = pen.units(4);
        double far = pen.units(OFFSET + 5);
        pen.line(end[0] + nx * near, end[1] + ny * near, end[0] + nx * far, end[1] + ny * far, width, ink);
    }

    /** A slim arrowhead with its tip at a place, pointing along (dx, dy). */
    private static void arrow(Pen pen, double[] tip, double dx, double dy, Scalar ink) {
        double baseX = tip[0] - dx * pen.units(ARROW_LENGTH);
        double baseY = tip[1] - dy * pen.units(ARROW_LENGTH);
        double half = pen.units(ARROW_HALF_WIDTH);
        pen.fill(
                List.of(tip, new double[] {baseX - dy * half, baseY + dx * half}, new double[] {
                    baseX + dy * half, baseY - dx * half
                }),
                ink);
    }

    /** Above the head; a name that would cover another moves up, a line at a time. */
    private void name(Pen pen, PlayerSighting player, List<double[]> taken) {
        Optional<ImageBox> box = player.observation().box();
        if (box.isEmpty()) {
            return;
        }
        String role = finding.roles().stream()
                .filter(r -> r.trackId() == player.trackId())
                .map(r -> r.role().words())
                .findFirst()
                .orElse("");
        Lettering lettering = new Lettering(pen, NAME_HEIGHT);
        String text = labels.of(player.trackId()) + " " + role;
        double[] top = at(new PixelPoint(
                box.get().left() + box.get().width() / 2, box.get().top()));
        double limit = pen.picture().cols() - lettering.width(text) - pen.units(4);
        double x = Math.max(pen.units(4), Math.min(limit, top[0] - lettering.width(text) / 2));
        double line = pen.units(NAME_HEIGHT * 1.75);
        double y = top[1] - pen.units(7);
        double right = x + lettering.width(text);
        for (int i = 0; i < MOST_NAMES && covers(taken, x, right, y, line); i++) {
            y -= line;
        }
        y = Math.max(pen.units(NAME_HEIGHT + 4), y);
        taken.add(new double[] {x, right, y});
        lettering.drawCased(text, x, y, Ink.INK);
    }

    private static boolean covers(List<double[]> taken, double left, double right, double y, double line) {
        return taken.stream().anyMatch(t -> left < t[1] && right > t[0] && Math.abs(y - t[2]) < line);
    }

    /** A pixel of the film on the picture that is drawn on; the centre of the top left pixel is at (0, 0) in both. */
    private double[] at(PixelPoint pixel) {
        return new double[] {(pixel.x() + 0.5) * filmScale - 0.5, (pixel.y() + 0.5) * filmScale - 0.5};
    }
}
