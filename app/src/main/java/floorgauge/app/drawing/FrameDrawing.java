package floorgauge.app.drawing;

import floorgauge.court.floor.FloorPoint;
import floorgauge.court.floor.PixelPoint;
import floorgauge.court.track.FloorFrame;
import floorgauge.court.track.FootSource;
import floorgauge.court.track.ImageBox;
import floorgauge.court.track.PlayerSighting;
import floorgauge.events.finding.Figure;
import floorgauge.events.finding.Finding;
import floorgauge.events.finding.Mark;
import floorgauge.events.finding.RoleHolder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * A frame of the film with what was measured drawn in: skeletons, the envelopes of those who have a role, distances on the
 * floor.
 *
 * @param finding what the frame shows
 * @param frame everyone in it
 * @param crop the part shown
 * @param floorToPixel where a floor point appears; empty out of sight
 */
public record FrameDrawing(
        Finding finding, FloorFrame frame, Crop crop, Function<FloorPoint, Optional<PixelPoint>> floorToPixel) {

    private static final double ENVELOPE_METRES = 0.25;
    private static final int ENVELOPE_CORNERS = 24;

    /** Below the feet, towards the camera. */
    private static final double DIMENSION_OFFSET = 17;

    /** A distance is drawn on the frame nearest to it, and on none farther than this. */
    private static final double SAME_MOMENT_SECONDS = 0.06;

    /**
     * Draws it.
     *
     * @param jpegDataAddress the cut-out part as a data address
     * @param caption what the frame shows, for its text equivalent
     */
    public String draw(String jpegDataAddress, String caption) {
        FramePlace place = new FramePlace(crop);
        Svg svg = new Svg(0, 0, FramePlace.WIDTH, place.height(), "frame", describe(caption));
        svg.image(0, 0, FramePlace.WIDTH, place.height(), jpegDataAddress);
        for (PlayerSighting player : frame.players()) {
            if (!holdsRole(player.trackId())) {
                player(svg, place, player, false);
            }
        }
        for (PlayerSighting player : frame.players()) {
            if (holdsRole(player.trackId())) {
                player(svg, place, player, true);
            }
        }
        for (Mark mark : finding.marks()) {
            distance(svg, place, mark);
        }
        NamePlaces names = new NamePlaces(FramePlace.WIDTH);
        for (PlayerSighting player : frame.players()) {
            if (holdsRole(player.trackId())) {
                name(svg, place, names, player);
            }
        }
        for (PlayerSighting player : frame.players()) {
            if (!holdsRole(player.trackId())) {
                name(svg, place, names, player);
            }
        }
        return svg.finish();
    }

    private void player(Svg svg, FramePlace place, PlayerSighting player, boolean holder) {
        if (player.observation().source() == FootSource.PREDICTED) {
            player.observation().box().ifPresent(box -> unseen(svg, place, box));
            return;
        }
        if (holder) {
            envelope(svg, place, player.observation().foot().mean());
        }
        player.observation().pose().ifPresent(pose -> {
            Skeleton.draw(svg, place, pose, holder ? "skeleton casing" : "skeleton bystander casing");
            Skeleton.draw(svg, place, pose, holder ? "skeleton" : "skeleton bystander");
        });
    }

    private static void unseen(Svg svg, FramePlace place, ImageBox box) {
        double x = place.x(box.left());
        double y = place.y(box.top());
        svg.rectangle(x, y, place.x(box.right()) - x, place.y(box.bottom()) - y, "unseen");
    }

    private void envelope(Svg svg, FramePlace place, FloorPoint centre) {
        List<double[]> ring = new ArrayList<>();
        for (int i = 0; i < ENVELOPE_CORNERS; i++) {
            double angle = 2 * Math.PI * i / ENVELOPE_CORNERS;
            Optional<PixelPoint> corner = floorToPixel.apply(new FloorPoint(
                    centre.xMetres() + ENVELOPE_METRES * Math.cos(angle),
                    centre.yMetres() + ENVELOPE_METRES * Math.sin(angle)));
            corner.ifPresent(c -> ring.add(place.at(c)));
        }
        if (ring.size() == ENVELOPE_CORNERS) {
            svg.polygon(ring, "floor-ring casing");
            svg.polygon(ring, "floor-ring");
        }
    }

    private void distance(Svg svg, FramePlace place, Mark mark) {
        if (mark instanceof Mark.Distance distance && isNow(distance.timeSeconds())) {
            Optional<FloorPoint> from = standing(distance.fromTrackId());
            Optional<FloorPoint> to = standing(distance.toTrackId());
            if (from.isPresent() && to.isPresent()) {
                dimension(svg, place, from.get(), to.get(), distance.figure());
            }
        } else if (mark instanceof Mark.DistanceToPoint distance && isNow(distance.timeSeconds())) {
            standing(distance.fromTrackId())
                    .ifPresent(from -> dimension(svg, place, from, distance.to(), distance.figure()));
        }
    }

    private void dimension(Svg svg, FramePlace place, FloorPoint from, FloorPoint to, Figure figure) {
        MeasuredEnds ends = MeasuredEnds.of(from, to, figure);
        Optional<PixelPoint> first = floorToPixel.apply(ends.from());
        Optional<PixelPoint> second = floorToPixel.apply(ends.to());
        if (first.isEmpty() || second.isEmpty()) {
            return;
        }
        double[] a = place.at(first.get());
        double[] b = place.at(second.get());
        // From right to left the left-hand side points down the page, towards the camera.
        double[] right = a[0] >= b[0] ? a : b;
        double[] left = a[0] >= b[0] ? b : a;
        DimensionLine line = new DimensionLine(
                right[0],
                right[1],
                left[0],
                left[1],
                DIMENSION_OFFSET,
                FigureText.of(figure),
                FigureText.isBeyond(figure),
                FramePlace.WIDTH);
        svg.group("casing");
        line.draw(svg);
        svg.end();
        line.draw(svg);
    }

    private void name(Svg svg, FramePlace place, NamePlaces names, PlayerSighting player) {
        Optional<ImageBox> box = player.observation().box();
        if (box.isEmpty() || !place.holds(box.get().bottomCentre())) {
            return;
        }
        String role = finding.roles().stream()
                .filter(h -> h.trackId() == player.trackId())
                .map(h -> " " + h.role().words())
                .findFirst()
                .orElse("");
        String text = player.trackId() + role;
        double x = place.x(box.get().left() + box.get().width() / 2);
        double[] free = names.place(x, place.y(box.get().top()) - 3, text.length());
        svg.text(free[0], free[1], "middle", role.isEmpty() ? "name bystander" : "name", text);
    }

    private boolean isNow(double timeSeconds) {
        return Math.abs(timeSeconds - frame.timeSeconds()) <= SAME_MOMENT_SECONDS;
    }

    private boolean holdsRole(int trackId) {
        return finding.roles().stream().anyMatch(h -> h.trackId() == trackId);
    }

    private Optional<FloorPoint> standing(int trackId) {
        return frame.players().stream()
                .filter(p -> p.trackId() == trackId)
                .findFirst()
                .map(p -> p.observation().foot().mean());
    }

    private String describe(String caption) {
        String roles = finding.roles().stream()
                .map(RoleHolder::trackId)
                .filter(id -> standing(id).isPresent())
                .map(String::valueOf)
                .collect(Collectors.joining(", "));
        return "Frame at " + FigureText.time(frame.timeSeconds()) + ": " + caption
                + (roles.isEmpty() ? "" : ", with players " + roles + " drawn in");
    }
}
