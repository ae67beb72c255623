"""Paint and air: dew point, when to paint, wet and dry film, litres, when to recoat."""
