-- Mean colour of a track's shirt, 0xRRGGBB of sRGB.
ALTER TABLE tracks ADD COLUMN shirt_rgb INTEGER;
