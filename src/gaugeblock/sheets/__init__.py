"""One public function an answer: it takes what people type and gives a Sheet of figures, checks and cautions."""
