package floorgauge.events.finding;

import java.util.Objects;

/**
 * Who had a role in a finding; two attackers who crowd each other are two holders of one role.
 *
 * @param role what
 * @param trackId who, a track of the film
 */
public record RoleHolder(Role role, int trackId) {

    public RoleHolder {
        Objects.requireNonNull(role, "role");
        if (trackId < 1) {
            throw new IllegalArgumentException("track ids count from 1: " + trackId);
        }
    }
}
