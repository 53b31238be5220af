package floorgauge.sampleclips.render.body;

/**
 * One foot at one instant.
 *
 * @param x of the ankle, court frame
 * @param y of the ankle, court frame
 * @param sole height of the sole above the floor, metres
 * @param yaw where the toes point, radians
 * @param pitch heel lifted above the toes, radians
 */
public record Foot(double x, double y, double sole, double yaw, double pitch) {

    Foot towards(Foot o, double share) {
        double turn = Math.IEEEremainder(o.yaw - yaw, 2 * Math.PI);
        return new Foot(
                x + share * (o.x - x),
                y + share * (o.y - y),
                sole + share * (o.sole - sole),
                yaw + share * turn,
                pitch + share * (o.pitch - pitch));
    }
}
