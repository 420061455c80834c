export const unit = {}
