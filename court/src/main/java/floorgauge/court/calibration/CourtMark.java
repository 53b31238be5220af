package floorgauge.court.calibration;

import floorgauge.court.floor.PixelPoint;

/** What a person marked in a picture: a point of the court, or a place on one of its lines. */
public sealed interface CourtMark permits MarkedPoint, MarkedPlace {

    /** What messages call it. */
    String label();

    /** Film point. */
    PixelPoint pixel();

    /** How many figures of the court's eight it settles: two for a point, one for a place on a line. */
    int settles();
}
