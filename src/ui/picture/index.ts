export { ClientPicture } from './ClientPicture'
