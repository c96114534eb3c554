export { SquareDesk } from "./square-desk.tsx";
export { SquareOffer } from "./square-offer.tsx";
